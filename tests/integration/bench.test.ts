/** The log of a sitting: idempotent, without gaps, one writer at a time, closed when it is closed. */
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Viewer } from "@/lib/access/viewer";
import { getBench } from "@/lib/data/get-bench";
import { getDatabase } from "@/lib/data/store/database";
import { rebuildSitting, type SittingEvent, SittingEventSchema } from "@/lib/plot/sitting-event";
import { claimBench } from "@/lib/workflows/claim-bench";
import { handIn } from "@/lib/workflows/hand-in";
import { openSitting } from "@/lib/workflows/open-sitting";
import { saveEvents } from "@/lib/workflows/save-events";
import { buildSchool, DAY_MS, type School, WRITER } from "@/tests/support/school";
import { makeMark } from "@/tests/support/school-marks";
import { standUpSchool } from "@/tests/support/stand-up-school";

let school: School;
let ada: Viewer;
let sittingId: string;
standUpSchool(async () => {
  school = await buildSchool();
});
beforeEach(async () => {
  ada = school.ada;
  sittingId = school.adaOnBench;
});
afterEach(() => {
  vi.useRealTimers();
});

const put = (seq: number, x = 0.1, id = `m${seq}`): SittingEvent => ({
  seq,
  atMs: seq * 1000,
  kind: "marks",
  put: [makeMark(id, x)],
  removed: [],
});
const save = (events: SittingEvent[], writerId = WRITER) => saveEvents(ada, { sittingId, writerId, events });

async function listSaved(): Promise<SittingEvent[]> {
  const rows = await getDatabase().sittingEvent.findMany({ where: { sittingId }, orderBy: { seq: "asc" } });
  return rows.map(({ body }) => SittingEventSchema.parse(body));
}

describe("saving", () => {
  it("acknowledges the last step, in whatever order a batch comes", async () => {
    expect(await save([put(4), put(3)])).toMatchObject({ lastSeq: 4 });
    expect((await listSaved()).map(({ seq }) => seq)).toEqual([1, 2, 3, 4]);
  });

  it("acknowledges again what is saved already, alone or with what is new, and doubles nothing", async () => {
    await save([put(3)]);
    expect(await save([put(3)])).toMatchObject({ lastSeq: 3 });
    expect(await save([put(3), put(4)])).toMatchObject({ lastSeq: 4 });
    expect(await listSaved()).toHaveLength(4);
  });

  it("takes the same step again though it was written with -0", async () => {
    const event = put(3, -0);
    await save([event]);
    expect(await save([event])).toMatchObject({ lastSeq: 3 });
  });

  it("keeps every number to the last digit", async () => {
    const x = 0.1 + 0.2 - 0.12345678901234568;
    await save([{ ...put(3, x), atMs: 1234.5678901 }]);
    expect((await listSaved())[2]).toEqual({ ...put(3, x), atMs: 1234.5678901 });
  });

  it("refuses another step in the place of one that is saved", async () => {
    await save([put(3)]);
    await expect(save([put(3, 0.2)])).rejects.toMatchObject({ code: "conflict" });
    await expect(save([put(3, 0.2), put(4)])).rejects.toMatchObject({ code: "conflict" });
    expect(await listSaved()).toHaveLength(3);
  });

  it("refuses a gap, and a step twice in one batch", async () => {
    await expect(save([put(4)])).rejects.toMatchObject({ code: "conflict" });
    await expect(save([put(3), put(5)])).rejects.toMatchObject({ code: "conflict" });
    await expect(save([put(3), put(3)])).rejects.toMatchObject({ code: "conflict" });
    expect(await listSaved()).toHaveLength(2);
  });

  it("refuses a whole batch for one mark that does not fit, and says which", async () => {
    const off = { ...put(4), put: [makeMark("m9", 0.6, 0.6)] } as SittingEvent;
    await expect(save([put(3), off])).rejects.toMatchObject({
      code: "bad-input",
      faults: [{ path: "events[1].put[0].shape.at" }],
    });
    const grade = { seq: 3, atMs: 1, kind: "grade", property: "clarity", grade: "Flawless" } as const;
    await expect(save([grade])).rejects.toMatchObject({
      code: "bad-input",
      faults: [{ path: "events[0].grades.clarity" }],
    });
    expect(await listSaved()).toHaveLength(2);
  });

  it("keeps a state that is what the log adds up to", async () => {
    await save([put(3), put(4), { seq: 5, atMs: 1, kind: "marks", put: [], removed: ["m3"] }]);
    await save([{ seq: 6, atMs: 2, kind: "prepared", step: "cleaned", done: true }]);
    await save([{ seq: 7, atMs: 3, kind: "grade", property: "clarity", grade: null }]);
    const bench = await getBench(ada, sittingId);
    const rebuilt = rebuildSitting(await listSaved());
    expect({ plot: bench.plot, prepared: bench.prepared, lastSeq: bench.lastSeq }).toEqual(rebuilt);
    expect(bench.plot.marks.map(({ id }) => id)).toEqual(["m1", "m4"]);
  });

  it("by many at once saves each step once", async () => {
    const batch = [put(3), put(4), put(5)];
    const answers = await Promise.all(Array.from({ length: 8 }, () => save(batch)));
    expect(answers).toEqual(answers.map(() => ({ lastSeq: 5, endsAt: null })));
    expect(await listSaved()).toHaveLength(5);
  });
});

describe("two tabs on one sitting", () => {
  const other = "another-writer";

  it("the second is told, and writes only once it has taken over", async () => {
    await expect(save([put(3)], other)).rejects.toMatchObject({ code: "taken-over" });
    const ask = (takeOver: boolean) => claimBench(ada, { sittingId, writerId: other, takeOver });
    await expect(ask(false)).rejects.toMatchObject({ code: "taken-over" });
    expect(await ask(true)).toEqual({ lastSeq: 2, writerId: other, endsAt: null });
    expect(await save([put(3)], other)).toMatchObject({ lastSeq: 3 });
    await expect(save([put(4)])).rejects.toMatchObject({ code: "taken-over" });
    await expect(handIn(ada, { sittingId, writerId: WRITER, lastSeq: 3 })).rejects.toMatchObject({
      code: "taken-over",
    });
  });
});

describe("handing in", () => {
  it("freezes the plot once, and gives the same answer again", async () => {
    const first = await handIn(ada, { sittingId, writerId: WRITER, lastSeq: 2 });
    expect(await handIn(ada, { sittingId, writerId: WRITER, lastSeq: 2 })).toEqual(first);
    await expect(save([put(3)])).rejects.toMatchObject({ code: "closed" });
    await expect(claimBench(ada, { sittingId, writerId: WRITER, takeOver: true })).rejects.toMatchObject({
      code: "closed",
    });
    const bench = await getBench(ada, sittingId);
    expect(bench.handedInAt).toBe(first.handedInAt);
  });

  it("acknowledges a step that was saved before, as its answer may have been lost", async () => {
    await save([put(3)]);
    await handIn(ada, { sittingId, writerId: WRITER, lastSeq: 3 });
    expect(await save([put(3)])).toMatchObject({ lastSeq: 3 });
  });

  it("is refused while the bench has steps that are not saved", async () => {
    const early = handIn(ada, { sittingId, writerId: WRITER, lastSeq: 5 });
    await expect(early).rejects.toMatchObject({ code: "conflict" });
  });

  it("is refused without the preparation that the exercise requires, and taken with it", async () => {
    await getDatabase().exercise.update({
      where: { id: school.exerciseId },
      data: { rules: { preparation: "required", schoolRules: "" } },
    });
    const early = handIn(ada, { sittingId, writerId: WRITER, lastSeq: 2 });
    await expect(early).rejects.toMatchObject({ code: "bad-input" });
    const steps = ["cleaned", "held", "tilted", "regripped"] as const;
    await save(steps.map((step, index) => ({ seq: 3 + index, atMs: 1, kind: "prepared", step, done: true })));
    expect(await handIn(ada, { sittingId, writerId: WRITER, lastSeq: 6 })).toHaveProperty("handedInAt");
  });
});

describe("the dates of an exercise", () => {
  const goTo = (days: number) => vi.useFakeTimers({ toFake: ["Date"], now: Date.now() + days * DAY_MS });
  const open = (viewer: Viewer) => openSitting(viewer, { exerciseStoneId: school.exerciseStoneIds[1] });

  it("past due it is still taken, once closed no more", async () => {
    goTo(1.5);
    expect(await save([put(3)])).toMatchObject({ lastSeq: 3 });
    goTo(2);
    await expect(save([put(4)])).rejects.toMatchObject({ code: "closed" });
    await expect(handIn(ada, { sittingId, writerId: WRITER, lastSeq: 3 })).rejects.toMatchObject({
      code: "closed",
    });
    await expect(open(school.ben)).rejects.toMatchObject({ code: "closed" });
    expect(await open(ada)).toEqual({ sittingId });
  });

  it("before it opens it is not begun", async () => {
    goTo(-3);
    await expect(open(school.ben)).rejects.toMatchObject({ code: "closed" });
  });
});
