/** Who needs a word, stones by difficulty, and shares by cluster: the rules at their edges. */
import { describe, expect, it } from "vitest";
import { deriveClusterRates } from "@/lib/agreement/cluster-rates";
import { computeClusteredShare } from "@/lib/agreement/clustered-share";
import { countPlot } from "@/lib/agreement/count-plot";
import { type Counts, sumCounts } from "@/lib/agreement/counts";
import { deriveRates } from "@/lib/agreement/derive-rates";
import { findNeeds, type StudentEvidence } from "@/lib/agreement/find-needs";
import type { RaschPlace } from "@/lib/agreement/fit-rasch";
import { rankDifficulty } from "@/lib/agreement/rank-difficulty";
import { DEFAULT_SCALES } from "@/lib/plot/grades";

const plot = (plotted: string, strays = 0, found = 1, overlooked = 1): Counts =>
  countPlot({
    reference: { grades: { clarity: "VS1" }, marks: [] },
    plotted: { grades: { clarity: plotted }, marks: [] },
    result: {
      total: 50,
      found: Array.from({ length: found }, (_, i) => ({
        reference: `f${i}`,
        mark: `m${i}`,
        value: 1,
        location: 1,
        type: 1,
        extent: 1,
      })),
      overlooked: Array.from({ length: overlooked }, (_, i) => `o${i}`),
      strays: Array.from({ length: strays }, (_, i) => ({
        mark: `s${i}`,
        cause: "dust" as const,
        because: [],
      })),
    },
    scales: DEFAULT_SCALES,
  });
const repeat = (one: Counts, times: number) => sumCounts(Array.from({ length: times }, () => one));
const at = (value: number): RaschPlace => ({
  value,
  standardError: 0.2,
  low: value - 0.4,
  high: value + 0.4,
});

function student(studentId: string, counts: Counts, ability: RaschPlace, handedInOfDue = 4): StudentEvidence {
  const { found, overlooked } = counts;
  return {
    studentId,
    name: studentId,
    rates: deriveRates(counts, DEFAULT_SCALES),
    found,
    overlooked,
    ability,
    due: 4,
    handedInOfDue,
  };
}

const MIDDLING = ["a", "b", "c", "d", "e"].map((id) => student(id, repeat(plot("VS1"), 6), at(0)));
const listKinds = (one: StudentEvidence, others = MIDDLING) => {
  const rates = deriveRates(repeat(plot("VS1"), 36), DEFAULT_SCALES);
  return findNeeds([...others, one], rates)
    .filter(({ studentId }) => studentId === one.studentId)
    .map(({ kind }) => kind);
};

describe("findNeeds", () => {
  it("names nobody where all are alike", () => {
    expect(listKinds(student("x", repeat(plot("VS1"), 6), at(0)))).toEqual([]);
  });

  it("names who overlooks, who draws what is not there, who grades harshly or leniently, who hands little in", () => {
    expect(listKinds(student("x", repeat(plot("VS1"), 6), at(-1)))).toEqual(["overlooks"]);
    expect(listKinds(student("x", repeat(plot("VS1", 3), 6), at(0)))).toEqual(["strays"]);
    expect(listKinds(student("x", repeat(plot("SI2"), 12), at(0)))).toEqual(["harsh"]);
    expect(listKinds(student("x", repeat(plot("Loupe-clean"), 12), at(0)))).toEqual(["lenient"]);
    expect(listKinds(student("x", repeat(plot("VS1"), 6), at(0), 1))).toEqual(["hand-in"]);
  });

  it("says nothing on two plots, however bad, and nothing of ability where fewer than five have a place", () => {
    expect(listKinds(student("x", repeat(plot("P3", 9, 0, 5), 2), at(-5)))).toEqual([]);
    expect(listKinds(student("x", repeat(plot("VS1"), 6), at(-1)), MIDDLING.slice(0, 3))).toEqual([]);
  });
});

describe("rankDifficulty", () => {
  const item = (name: string, easiness: RaschPlace) => ({ item: name, seen: 10, right: 5, easiness });
  const all: RaschPlace = { beyond: "above", undefined: "all" };

  it("puts the hardest first and what has no place last, with marks beyond range counted", () => {
    const ranked = rankDifficulty(
      [item("p1", at(1)), item("q1", at(-1)), item("q2", at(-2)), item("q3", all), item("r1", all)],
      (name) => name.slice(0, 1),
    );
    expect(ranked.map(({ stoneId }) => stoneId)).toEqual(["q", "p", "r"]);
    expect(ranked[0]).toMatchObject({ marks: 3, foundByAll: 1, foundByNobody: 0 });
    // The mean of 1 and 2; errors 0.2 each: sqrt(0.08) / 2.
    expect(ranked[0]?.difficulty).toMatchObject({
      value: 1.5,
      standardError: expect.closeTo(Math.sqrt(0.08) / 2, 12),
    });
    expect(ranked[2]?.difficulty).toEqual({ undefined: "beyond range: everyone found all of its marks" });
  });
});

describe("deriveClusterRates", () => {
  it("has the values of deriveRates and the intervals of computeClusteredShare", () => {
    const students = [repeat(plot("VS1", 0, 2, 0), 3), repeat(plot("VS2", 0, 0, 2), 3)];
    const rates = deriveRates(sumCounts(students), DEFAULT_SCALES);
    const clusters = deriveClusterRates(students);
    expect(clusters.detection).toEqual(
      computeClusteredShare([
        { hits: 6, trials: 6 },
        { hits: 0, trials: 6 },
      ]),
    );
    expect(clusters.detection).toMatchObject({ value: 0.5 });
    expect(rates.detection).toMatchObject({ value: 0.5 });
    expect(clusters.exact).toMatchObject({ value: 0.5 });
  });

  it("of nobody is undefined, with the reason", () => {
    expect(deriveClusterRates([]).detection).toEqual({ undefined: "no reference mark" });
  });
});
