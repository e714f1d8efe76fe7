/** What reaches a student, in answers and in refusals, is searched for what only a reference or another's work holds. */
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { getDebrief } from "@/lib/data/get-debrief";
import { getDatabase } from "@/lib/data/store/database";
import { saveEvents } from "@/lib/workflows/save-events";
import { DATA_CASES } from "@/tests/access/data-cases";
import { WORKFLOW_CASES } from "@/tests/access/workflow-cases";
import { createTestDatabase, keepSnapshot, type TestDatabase } from "@/tests/support/database";
import { buildSchool, type School, WRITER } from "@/tests/support/school";
import { addDesk } from "@/tests/support/school-desk";
import { makeMark, SECRETS } from "@/tests/support/school-marks";

let template: TestDatabase;
let snapshot: string;
let school: School;
let current: TestDatabase;
beforeAll(async () => {
  template = await createTestDatabase();
  school = await addDesk(await buildSchool());
  snapshot = await keepSnapshot(template);
});
beforeEach(async () => {
  current = await createTestDatabase(snapshot);
});
afterAll(() => template.remove());

/** Everything that a caller gets back, answer or refusal, as text. */
async function receive(call: () => Promise<unknown>): Promise<string> {
  try {
    return JSON.stringify((await call()) ?? null);
  } catch (thrown) {
    if (!(thrown instanceof AppError)) throw thrown;
    return JSON.stringify([thrown.code, thrown.message, thrown.faults]);
  }
}

const FORBIDDEN = {
  ada: [
    ...SECRETS.reference,
    ...SECRETS.decoy,
    ...SECRETS.ben,
    ...SECRETS.cyd,
    ...SECRETS.reading,
    ...SECRETS.review,
  ],
  ben: [
    ...SECRETS.reference,
    ...SECRETS.decoy,
    ...SECRETS.ada,
    ...SECRETS.cyd,
    ...SECRETS.reading,
    ...SECRETS.review,
  ],
  cyd: [
    ...SECRETS.reference,
    ...SECRETS.decoy,
    ...SECRETS.ada,
    ...SECRETS.ben,
    ...SECRETS.reading,
    ...SECRETS.review,
  ],
} as const;

const ALL = Object.entries({ ...DATA_CASES, ...WORKFLOW_CASES });

describe.each(["ada", "ben", "cyd"] as const)("%s", (student) => {
  it("receives nothing of a reference, a decoy or another student's work from any function", async () => {
    let searched = 0;
    for (const [name, { call }] of ALL) {
      const text = await receive(() => call(school[student], school));
      searched += text.length;
      for (const secret of FORBIDDEN[student]) expect(text, name).not.toContain(secret);
    }
    expect(searched).toBeGreaterThan(1000);
    await current.remove();
  });
});

describe("the search itself", () => {
  it("finds what staff are sent", async () => {
    const text = JSON.stringify(await getDebrief(school.iris, school.adaScored));
    for (const secret of ["reference-secret", "0.1357911", "decoy-secret", "0.2468013", "0.0314159"]) {
      expect(text).toContain(secret);
    }
    await current.remove();
  });
});

describe("a released debrief", () => {
  it("shows its own student the reference and nobody else's work", async () => {
    const text = JSON.stringify(await getDebrief(school.ben, school.benReleased));
    for (const secret of ["reference-secret", "decoy-secret", ...SECRETS.ben]) expect(text).toContain(secret);
    for (const secret of ["note-secret", ...SECRETS.ada, ...SECRETS.cyd]) expect(text).not.toContain(secret);
    await current.remove();
  });

  it("keeps back which other stone the plot would fit, in the result and in the advice", async () => {
    const row = await getDatabase().result.findFirstOrThrow({
      where: { handIn: { sittingId: school.benReleased }, isCurrent: true },
    });
    const result = { ...(row.result as object), suspectStone: "T-2" };
    const practise = [
      "The marks fit stone T-2 better than this one: make sure which stone you had.",
      "Tilt.",
    ];
    const detail = { ...(row.detail as object), practise };
    await getDatabase().result.update({ where: { id: row.id }, data: { result, detail } });
    const own = await getDebrief(school.ben, school.benReleased);
    expect(own.result.suspectStone).toBeNull();
    expect(own.detail.practise).toEqual(["Tilt."]);
    expect((await getDebrief(school.iris, school.benReleased)).result.suspectStone).toBe("T-2");
    await current.remove();
  });
});

describe("a refusal of the bench", () => {
  const refuse = (viewer: Viewer, events: unknown[]) =>
    receive(() =>
      saveEvents(viewer, {
        sittingId: school.adaOnBench,
        writerId: WRITER,
        events: events as Parameters<typeof saveEvents>[1]["events"],
      }),
    );

  it.each([
    ["a mark off the stone", { put: [makeMark("m9", 0.7, 0.7)] }],
    [
      "an unknown characteristic",
      { put: [{ ...makeMark("m9", 0.1), characteristic: "scratch-of-nowhere" }] },
    ],
    ["a shape that is none", { put: [{ ...makeMark("m9", 0.1), shape: { kind: "dot" } }] }],
  ])("%s: says where the fault is, and nothing of the reference", async (_what, change) => {
    const text = await refuse(school.ada, [{ seq: 3, atMs: 1, kind: "marks", removed: [], ...change }]);
    expect(text).toContain("bad-input");
    expect(text).toContain("events[0].put[0]");
    for (const secret of FORBIDDEN.ada) expect(text).not.toContain(secret);
    await current.remove();
  });
});

describe("ids", () => {
  it("are random: of version 4, and none can be told from another", async () => {
    const database = getDatabase();
    const people = await database.user.findMany({ select: { id: true } });
    const sittings = await database.sitting.findMany({ select: { id: true } });
    const stones = await database.exerciseStone.findMany({ select: { id: true } });
    const references = await database.reference.findMany({ select: { id: true } });
    const ids = [...people, ...sittings, ...stones, ...references].map(({ id }) => id);
    expect(ids.length).toBeGreaterThan(12);
    for (const id of ids)
      expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
    expect(new Set(ids.map((id) => id.slice(0, 6))).size).toBe(ids.length);
    await current.remove();
  });
});
