/** Proofs that an exercise requires: a hand-in without them is refused with the place of each, and loses nothing. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { getBench } from "@/lib/data/get-bench";
import { getDatabase } from "@/lib/data/store/database";
import { handIn } from "@/lib/workflows/hand-in";
import { openSitting } from "@/lib/workflows/open-sitting";
import { saveEvents } from "@/lib/workflows/save-events";
import { createTestDatabase, type TestDatabase } from "@/tests/support/database";
import { buildSchool, type School, WRITER } from "@/tests/support/school";
import { makeMark } from "@/tests/support/school-marks";

let school: School;
let database: TestDatabase;
beforeAll(async () => {
  database = await createTestDatabase();
  school = await buildSchool();
  const rules = { preparation: "off", schoolRules: "", proofs: "dots", areProofsRequired: true };
  await getDatabase().exercise.update({ where: { id: school.exerciseId }, data: { rules } });
});
afterAll(() => database.remove());

describe("proofs that are required", () => {
  it("keep a plot from being handed in until each dot has one, and name the dots that have none", async () => {
    const exerciseStoneId = school.exerciseStoneIds[1];
    const { sittingId } = await openSitting(school.ben, { exerciseStoneId, agreedMinutes: null });
    const stroke = {
      ...makeMark("s1", 0.1),
      characteristic: "feather",
      shape: {
        kind: "stroke" as const,
        points: [[0.1, 0.1] as [number, number], [0.15, 0.12] as [number, number]],
      },
    };
    const proved = { ...makeMark("m1", 0.02), proofs: ["tilted" as const] };
    const unproved = makeMark("m2", 0.2);
    const put = (seq: number, marks: (typeof unproved | typeof stroke)[]) =>
      saveEvents(school.ben, {
        sittingId,
        writerId: WRITER,
        events: [{ seq, atMs: 1000 * seq, kind: "marks", put: marks, removed: [] }],
      });
    await put(1, [proved, unproved, stroke]);
    const early = handIn(school.ben, { sittingId, writerId: WRITER, lastSeq: 1 });
    await expect(early).rejects.toMatchObject({
      code: "bad-input",
      faults: [{ path: "plot.marks[1].proofs", message: "has no proof" }],
    });
    const bench = await getBench(school.ben, sittingId);
    expect(bench.handedInAt).toBeNull();
    expect(bench.plot.marks.map(({ id }) => id)).toEqual(["m1", "m2", "s1"]);
    await put(2, [{ ...unproved, proofs: ["wiped" as const] }]);
    await handIn(school.ben, { sittingId, writerId: WRITER, lastSeq: 2 });
    expect((await getBench(school.ben, sittingId)).handedInAt).not.toBeNull();
  });
});
