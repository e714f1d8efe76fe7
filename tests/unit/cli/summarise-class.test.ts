import { describe, expect, it } from "vitest";
import { type ScoredRow, summariseClass } from "@/lib/cli/summarise-class";
import { parseExerciseSet } from "@/lib/plot/parse-exercise-set";
import type { FiledPlot } from "@/lib/plot/plots-file";
import type { ScoreResult } from "@/lib/plot/score-result";
import type { Stone } from "@/lib/plot/stone";
import { makeSampleSet } from "@/tests/support/sample-set";

const resolved = parseExerciseSet(makeSampleSet());
const [stone] = resolved.set.stones as [Stone];
const [first, second, third] = stone.marks.map(({ id }) => id) as [string, string, string];

const dot = (id: string, characteristic: string, confidence?: number): FiledPlot["marks"][number] => ({
  id,
  view: "crown",
  characteristic,
  shape: { kind: "dot", at: [0, 0] },
  ...(confidence === undefined ? {} : { confidence }),
});

const find = (reference: string, mark: string) => ({
  reference,
  mark,
  value: 1,
  location: 1,
  type: 1,
  extent: 1,
});

function makeRow(by: string, plot: Partial<FiledPlot>, result: Partial<ScoreResult>): ScoredRow {
  return {
    stone,
    plot: { stone: stone.id, by, grades: {}, marks: [], ...plot },
    result: {
      stone: stone.id,
      by,
      total: 0,
      alignment: { turnDeg: 0, wouldFit: null },
      found: [],
      overlooked: [],
      strays: [],
      lines: [],
      suspectStone: null,
      ...result,
    },
  };
}

const stray = (mark: string) => ({ mark, cause: "unexplained" as const, because: [] });

describe("the class at a glance", () => {
  it("of the sample set has three marks and SI1 to be graded", () => {
    expect(stone.grades.clarity).toBe("SI1");
    expect(third).toBeDefined();
  });

  const rows = [
    makeRow(
      "ada",
      {
        grades: { clarity: "SI1" },
        marks: [dot("m1", "knot", 5), dot("m2", "feather", 2), dot("m3", "crystal", 4)],
      },
      {
        total: 80.5,
        found: [find(first, "m1"), find(second, "m2")],
        overlooked: [third],
        strays: [stray("m3")],
      },
    ),
    makeRow(
      "bo",
      { grades: { clarity: "VS1" }, marks: [dot("m1", "crystal")] },
      { total: 40, overlooked: [first, second, third], strays: [stray("m1")] },
    ),
    makeRow("ada", {}, { total: 10, overlooked: [first, second, third] }),
  ];
  const summary = summariseClass(resolved, rows);

  it("counts each student's plots, and derives shares from the plots that were graded", () => {
    expect(summary.students).toEqual([
      {
        by: "ada",
        plots: 2,
        meanTotal: 45.25,
        exact: 1,
        withinOne: 1,
        bias: 0,
        found: 2,
        overlooked: 4,
        strays: 1,
      },
      {
        by: "bo",
        plots: 1,
        meanTotal: 40,
        exact: 0,
        withinOne: 0,
        bias: -2,
        found: 0,
        overlooked: 3,
        strays: 1,
      },
    ]);
  });

  it("counts each stone in the same way", () => {
    const [row] = summary.stones;
    expect(row).toMatchObject({ stone: stone.id, plots: 3, exact: 0.5, withinOne: 0.5, bias: -1, found: 2 });
    expect(row?.meanTotal).toBeCloseTo(130.5 / 3, 12);
  });

  it("counts what each characteristic was taken for", () => {
    const one = summary.characteristics.find(
      ({ characteristic }) => characteristic === stone.marks[0]?.characteristic,
    );
    expect(one?.found).toBe(Object.values(one?.takenFor ?? {}).reduce((sum, count) => sum + count, 0));
    expect(summary.characteristics.reduce((sum, { reference }) => sum + reference, 0)).toBe(9);
    expect(summary.characteristics.reduce((sum, { found }) => sum + found, 0)).toBe(2);
    expect(one?.takenFor).toEqual({ knot: 1 });
  });

  it("cumulates the free response from confidence 5 down, marks without one counting as 1", () => {
    expect(summary.freeResponse).toEqual([
      { confidence: 5, foundShare: 1 / 9, straysPerPlot: 0 },
      { confidence: 4, foundShare: 1 / 9, straysPerPlot: 1 / 3 },
      { confidence: 3, foundShare: 1 / 9, straysPerPlot: 1 / 3 },
      { confidence: 2, foundShare: 2 / 9, straysPerPlot: 1 / 3 },
      { confidence: 1, foundShare: 2 / 9, straysPerPlot: 2 / 3 },
    ]);
  });

  it("says null where there is nothing to divide by", () => {
    const nothing = summariseClass(resolved, []);
    expect(nothing).toMatchObject({ students: [], characteristics: [], stones: [] });
    expect(nothing.freeResponse[0]).toEqual({ confidence: 5, foundShare: null, straysPerPlot: null });
    const [ungraded] = summariseClass(resolved, [makeRow("cy", {}, {})]).students;
    expect(ungraded).toMatchObject({ exact: null, withinOne: null, bias: null, meanTotal: 0 });
  });
});
