/** Tallies and their sums: the same figures as from full results, whatever came in between. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { countPlot } from "@/lib/agreement/count-plot";
import { type Counts, NO_COUNTS, sumCounts } from "@/lib/agreement/counts";
import { getDatabase } from "@/lib/data/store/database";
import { ExerciseTermsSchema, resolveTerms } from "@/lib/plot/exercise-terms";
import { PlotSchema } from "@/lib/plot/plots-file";
import { TALLY_SUM_KINDS, toWeek } from "@/lib/plot/result-tally";
import { ScoreResultSchema } from "@/lib/plot/score-result";
import { ReferenceSchema } from "@/lib/plot/stone";
import { applyRescore } from "@/lib/workflows/apply-rescore";
import { loadDemo } from "@/lib/workflows/load-demo";
import { listTallySums } from "@/lib/workflows/tally/list-tally-sums";
import { createTestDatabase, type TestDatabase } from "@/tests/support/database";
import { buildSchool, plotAndHandIn } from "@/tests/support/school";
import { addRescore } from "@/tests/support/school-desk";

let database: TestDatabase;
beforeEach(async () => {
  database = await createTestDatabase();
});
afterEach(() => database.remove());

interface Counted {
  readonly exerciseId: string;
  readonly exerciseStoneId: string;
  readonly studentId: string;
  readonly handedInAt: Date;
  readonly counts: Counts;
}

/** Every current result read whole and counted by lib/agreement, past the tallies. */
async function countAll(): Promise<Counted[]> {
  const rows = await getDatabase().result.findMany({
    where: { isCurrent: true },
    include: {
      reference: true,
      handIn: { include: { sitting: { include: { exerciseStone: { include: { exercise: true } } } } } },
    },
  });
  return rows.map(({ result, reference, handIn }) => ({
    exerciseId: handIn.sitting.exerciseStone.exerciseId,
    exerciseStoneId: handIn.sitting.exerciseStoneId,
    studentId: handIn.sitting.studentId,
    handedInAt: handIn.handedInAt,
    counts: countPlot({
      reference: ReferenceSchema.parse(reference.body),
      plotted: PlotSchema.parse(handIn.plot),
      result: ScoreResultSchema.parse(result),
      scales: resolveTerms(ExerciseTermsSchema.parse(handIn.sitting.exerciseStone.exercise.terms)).scales,
    }),
  }));
}

const KEY = {
  exercise: (one: Counted) => one.exerciseId,
  stone: (one: Counted) => one.exerciseStoneId,
  student: (one: Counted) => one.studentId,
  week: (one: Counted) => toWeek(one.handedInAt),
};

async function listExerciseIds(): Promise<string[]> {
  return (await getDatabase().exercise.findMany({ select: { id: true } })).map(({ id }) => id);
}

async function expectSumsToBeWhole(): Promise<void> {
  const ids = await listExerciseIds();
  const all = await countAll();
  for (const kind of TALLY_SUM_KINDS) {
    const sums = await listTallySums(ids, kind);
    const expected = new Map<string, Counts[]>();
    if (kind === "exercise") for (const id of ids) expected.set(`${id} ${id}`, []);
    for (const one of all) {
      const key = `${one.exerciseId} ${KEY[kind](one)}`;
      expected.set(key, [...(expected.get(key) ?? []), one.counts]);
    }
    expect(sums.length).toBe(expected.size);
    for (const { exerciseId, key, counts } of sums) {
      expect(counts).toEqual(sumCounts(expected.get(`${exerciseId} ${key}`) ?? [NO_COUNTS]));
    }
  }
}

describe("the sums of tallies", () => {
  it("equal what lib/agreement counts from the full results of the demo, which was scored without tallies", async () => {
    await loadDemo();
    expect(await getDatabase().resultTally.count()).toBe(0);
    await expectSumsToBeWhole();
    expect(await getDatabase().resultTally.count()).toBe(
      await getDatabase().result.count({ where: { isCurrent: true } }),
    );
  });

  it("stay whole when a hand-in is scored after they were made, and when a rescore is applied", async () => {
    const school = await addRescore(await buildSchool());
    await expectSumsToBeWhole();
    const before = await listTallySums([school.exerciseId], "exercise");
    await plotAndHandIn(school.ben, school.exerciseStoneIds[1], 0.1357911);
    await expectSumsToBeWhole();
    const after = await listTallySums([school.exerciseId], "exercise");
    expect(after[0]?.counts.plots).toBe((before[0]?.counts.plots ?? 0) + 1);
    await getDatabase().rescore.updateMany({ data: { state: "ready" } });
    await applyRescore(school.iris, { rescoreId: school.rescoreId });
    await expectSumsToBeWhole();
    const rescored = await listTallySums([school.exerciseId], "exercise");
    expect(rescored[0]?.counts.hundredths).not.toBe(after[0]?.counts.hundredths);
  });
});

describe("toWeek", () => {
  it("is the Monday of the instant's week", () => {
    // 25 November 2026 is a Wednesday, 22 November a Sunday (ISO 8601 weeks begin on Monday).
    expect(toWeek(new Date("2026-11-25T09:00:00Z"))).toBe("2026-11-23");
    expect(toWeek(new Date("2026-11-22T23:59:59Z"))).toBe("2026-11-16");
    expect(toWeek(new Date("2026-11-23T00:00:00Z"))).toBe("2026-11-23");
  });
});
