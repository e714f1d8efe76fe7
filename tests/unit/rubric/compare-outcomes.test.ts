/** The live example: one plot by two rubrics, and the distance that no rubric enters. */
import { describe, expect, it } from "vitest";
import {
  listPointPairs,
  pairOutcomes,
  scoreExample,
  toExampleView,
} from "@/components/rubric/compare-outcomes";
import { CUT_OFF_WIDTHS, measurePlotDistance } from "@/components/staff/measure-plot-distance";
import { DEFAULT_TERMS, resolveTerms } from "@/lib/plot/exercise-terms";
import type { RubricExample } from "@/lib/plot/rescore-view";
import { DEFAULT_RUBRIC, type Rubric } from "@/lib/plot/rubric";
import { StoneBodySchema } from "@/lib/plot/stone";

const TERMS = resolveTerms({ scales: DEFAULT_TERMS.scales, characteristics: DEFAULT_TERMS.characteristics });
const dot = (id: string, x: number) => ({
  id,
  view: "crown" as const,
  characteristic: "crystal",
  shape: { kind: "dot" as const, at: [x, 0.1] as [number, number] },
});
const EXAMPLE: RubricExample = {
  sittingId: "s",
  studentName: "A student",
  stone: { label: "T-1", ...StoneBodySchema.parse({ cut: "round-brilliant" }) },
  reference: { grades: { clarity: "SI1" }, marks: [dot("a", 0), dot("b", 0.3)], decoys: [] },
  // One 0.06 from its reference mark, one near nothing.
  plot: { grades: { clarity: "VS2" }, marks: [dot("m1", 0.06), dot("m2", -0.3)] },
};
const STRICT: Rubric = { ...DEFAULT_RUBRIC, near: 0.01, far: 0.05 };
const score = (rubric: Rubric) => {
  const scored = scoreExample(EXAMPLE, rubric, TERMS);
  return { rubric, scored, view: toExampleView(EXAMPLE, rubric, TERMS, scored) };
};

describe("two rubrics", () => {
  const [before, after] = [score(DEFAULT_RUBRIC), score(STRICT)];

  it("are told mark by mark, those that differ first", () => {
    const pairs = pairOutcomes(before.view, after.view);
    expect(pairs.map(({ key, isChanged }) => [key, isChanged])).toEqual([
      ["mark:m1", true],
      ["reference:a", true],
      ["reference:b", false],
      ["mark:m2", false],
    ]);
    expect(pairs[0]?.before).toMatch(/^found, \d+ %$/);
    expect(pairs[0]?.after).toMatch(/^stray: /);
    expect([pairs[1]?.before, pairs[1]?.after]).toEqual(["found", "overlooked"]);
  });

  it("are told in points that add up to the engine's totals", () => {
    const pairs = listPointPairs(before, after);
    const total = pairs.at(-1);
    expect([total?.before, total?.after]).toEqual([before.scored.result.total, after.scored.result.total]);
    for (const side of ["before", "after"] as const) {
      const sum = pairs.slice(0, -1).reduce((all, pair) => all + pair[side], 0);
      expect(sum).toBeCloseTo(total?.[side] ?? -1, 9);
    }
  });

  it("that are the same change nothing", () => {
    expect(
      pairOutcomes(before.view, score(DEFAULT_RUBRIC).view).filter(({ isChanged }) => isChanged),
    ).toEqual([]);
  });
});

describe("the distance without a rubric", () => {
  it("is worked out by hand: one pair 0.06 apart, one mark overlooked, one stray", () => {
    const { ospa, gospa } = measurePlotDistance(score(DEFAULT_RUBRIC).view);
    // OSPA, p = 1: the mean over two of 0.06 and c. GOSPA, p = 1: 0.06 + c/2 + c/2.
    expect(ospa).toBeCloseTo((0.06 + CUT_OFF_WIDTHS) / 2, 12);
    expect(gospa.value).toBeCloseTo(0.06 + CUT_OFF_WIDTHS, 12);
  });

  it("is the same by any rubric", () => {
    expect(measurePlotDistance(score(STRICT).view)).toEqual(measurePlotDistance(score(DEFAULT_RUBRIC).view));
  });
});
