/** Whoever reads a stone blind is searched for what only its reference holds, in everything that staff can ask for. */
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { AppError } from "@/lib/base/app-error";
import { getDatabase } from "@/lib/data/store/database";
import type { Reference } from "@/lib/plot/stone";
import { giveUpSecondReading } from "@/lib/workflows/give-up-second-reading";
import { handIn } from "@/lib/workflows/hand-in";
import { releaseDebriefs } from "@/lib/workflows/release-debriefs";
import { saveReference } from "@/lib/workflows/save-reference";
import { scoreHandIn } from "@/lib/workflows/score-hand-in";
import { startSecondReading } from "@/lib/workflows/start-second-reading";
import { DATA_CASES } from "@/tests/access/data-cases";
import { WORKFLOW_CASES } from "@/tests/access/workflow-cases";
import { createTestDatabase, keepSnapshot, type TestDatabase } from "@/tests/support/database";
import { buildSchool, type School, WRITER } from "@/tests/support/school";
import { addDesk } from "@/tests/support/school-desk";
import { REFERENCE } from "@/tests/support/school-marks";

/** What the newest reference of the stone holds and nothing else does. */
const SECRETS = ["blind-secret", "0.4142135", "blind-note"];
const BLIND_REFERENCE: Reference = {
  ...REFERENCE,
  marks: [
    {
      id: "blind-secret-1",
      view: "crown",
      characteristic: "etch-channel",
      shape: { kind: "dot", at: [0.1, -0.4142135] },
      weight: 3,
    },
  ],
  decoys: [
    { id: "blind-secret-2", view: "crown", cause: "echo", shape: { kind: "dot", at: [0.4142135, 0] } },
  ],
};

/** Ends the reading or sees its comparison: what the walk leaves out, as the reader sees the reference then. */
const ENDS = /^(hand-in-second-reading|give-up-second-reading) /;
const ALL = Object.entries({ ...DATA_CASES, ...WORKFLOW_CASES }).filter(([name]) => !ENDS.test(name));

let template: TestDatabase;
let snapshot: string;
let schools: readonly School[];
let current: TestDatabase;

/**
 * The school with the second stone read blind by Otto and by the director, and a plot of it scored and released; seen twice,
 * so that what the cases ask of a stone, a sitting and a tray comes to that stone as well.
 */
async function buildBlindSchool(): Promise<readonly School[]> {
  const school = await addDesk(await buildSchool());
  const { iris, ada, director, stoneIds, exerciseStoneIds, adaOnBench } = school;
  const [, stoneId] = stoneIds;
  const at = { stoneId, baseVersion: 1, reference: BLIND_REFERENCE, note: "blind-note" };
  await saveReference(iris, at);
  const { handInId } = await handIn(ada, { sittingId: adaOnBench, writerId: WRITER, lastSeq: 2 });
  await scoreHandIn(handInId);
  await releaseDebriefs(iris, { sittingIds: [adaOnBench] });
  await startSecondReading(director, { stoneId });
  const turned: School = {
    ...school,
    stoneIds: [stoneId, stoneIds[0]],
    exerciseStoneIds: [exerciseStoneIds[1], exerciseStoneIds[0]],
    adaScored: adaOnBench,
    benReleased: adaOnBench,
    ben: ada,
  };
  return [school, turned];
}

beforeAll(async () => {
  template = await createTestDatabase();
  schools = await buildBlindSchool();
  snapshot = await keepSnapshot(template);
});
beforeEach(async () => {
  current = await createTestDatabase(snapshot);
});
afterAll(() => template.remove());

/** What everybody but a reader gets: the answers, and refusals apart. */
async function walk(by: "director" | "otto" | "iris") {
  const answers: { name: string; text: string; code: string | null }[] = [];
  for (const school of schools) {
    for (const [name, { call }] of ALL) {
      try {
        const text = JSON.stringify((await call(school[by], school)) ?? null);
        answers.push({ name, text, code: null });
      } catch (thrown) {
        if (!(thrown instanceof AppError)) throw thrown;
        answers.push({ name, text: JSON.stringify([thrown.message, thrown.faults]), code: thrown.code });
      }
    }
  }
  return answers;
}

const holdsSecret = (text: string) => SECRETS.some((secret) => text.includes(secret));

describe.each(["director", "otto"] as const)("%s, who reads a stone blind", (by) => {
  it("receives nothing of its reference from any function", async () => {
    const answers = await walk(by);
    expect(answers.filter(({ text }) => holdsSecret(text)).map(({ name }) => name)).toEqual([]);
    await current.remove();
  });
});

describe("the search itself", () => {
  it("finds the reference in what somebody gets who does not read the stone blind", async () => {
    const answers = await walk("iris");
    const names = new Set(answers.filter(({ text }) => holdsSecret(text)).map(({ name }) => name));
    for (const name of ["get-stone getStone", "get-debrief getDebrief", "export-tray-set exportTraySet"]) {
      expect(names).toContain(name);
    }
    await current.remove();
  });

  it("meets a refusal that says what to do", async () => {
    const refused = (await walk("director")).filter(({ code }) => code === "reading-blind");
    expect(refused.length).toBeGreaterThan(5);
    for (const { text } of refused)
      expect(text).toMatch(/T-2 blind.*Hand the reading in or give it up first/);
    await current.remove();
  });

  it("finds it again for a reader who has given up", async () => {
    const [school] = schools;
    if (school === undefined) throw new Error("no school");
    const { director, stoneIds } = school;
    const own = await getDatabase().secondReading.findFirstOrThrow({
      where: { readerId: director.userId, state: "drawing" },
    });
    await giveUpSecondReading(director, { readingId: own.id });
    expect((await walk("director")).some(({ text }) => holdsSecret(text))).toBe(true);
    await expect(startSecondReading(director, { stoneId: stoneIds[1] })).rejects.toMatchObject({
      code: "conflict",
    });
    await current.remove();
  });
});
