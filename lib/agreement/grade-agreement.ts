import { createAgreementWeights, type WeightKind } from "@/lib/agreement/agreement-weights";
import { computeCohenKappa } from "@/lib/agreement/cohen-kappa";
import type { Agreement } from "@/lib/agreement/compute-agreement";
import { type ConfusionTable, toGradeConfusion } from "@/lib/agreement/confusion-table";
import type { GradeCounts } from "@/lib/agreement/counts";
import { computeFleissKappa } from "@/lib/agreement/fleiss-kappa";
import { computeGwetAc } from "@/lib/agreement/gwet-ac";
import { type AlphaOptions, computeKrippendorffAlphas } from "@/lib/agreement/krippendorff-alpha";
import { computeMeanInterval } from "@/lib/agreement/mean-interval";
import { toStatistic } from "@/lib/agreement/statistic";
import type { UnitPattern } from "@/lib/agreement/unit-patterns";
import { computeWilsonInterval } from "@/lib/agreement/wilson-interval";

/** Agreement of students' grades of one property with the references', from counts; all in closed form. */
export interface GradeRates extends Pick<Agreement, "exact" | "withinOne" | "bias" | "kappa"> {
  readonly graded: number;
  readonly confusion: ConfusionTable;
}

/**
 * Exact and within-one share (Wilson), signed bias in steps (positive is harsh), and Cohen's kappa of plotted grades with
 * reference grades. The same figures as `computeAgreement` gives for the rater "reference" and the rater "plotted", with
 * each plot as an item. `scale` is the full list, best first. Nothing graded: all undefined.
 */
export function deriveGradeRates(counts: GradeCounts, scale: readonly string[]): GradeRates {
  const confusion = toGradeConfusion(counts.confusion, scale);
  const kappa = (kind: WeightKind) =>
    toStatistic(computeCohenKappa(confusion.counts, createAgreementWeights(kind, scale.length)));
  const most = Math.max(0, scale.length - 1);
  const reason = "nothing was graded";
  return {
    graded: counts.graded,
    exact: computeWilsonInterval(counts.exact, counts.graded, reason),
    withinOne: computeWilsonInterval(counts.withinOne, counts.graded, reason),
    bias: computeMeanInterval(
      { count: counts.graded, sum: counts.steps, sumOfSquares: counts.stepsSquared },
      { least: 0 - most, most, unseen: Math.min(1, most) },
      reason,
    ),
    kappa: { unweighted: kappa("identity"), linear: kappa("linear"), quadratic: kappa("quadratic") },
    confusion,
  };
}

/**
 * The remaining coefficients of scoring.md 9 from the same counts: Fleiss' kappa, AC1 and Krippendorff's alpha, whose
 * bootstrap makes this the slower half: its work grows with `graded`. Nothing graded: all undefined.
 */
export function deriveGradeCoefficients(
  counts: GradeCounts,
  scale: readonly string[],
  options: AlphaOptions = {},
): Pick<Agreement, "fleiss" | "alpha" | "ac1"> {
  const { counts: cross } = toGradeConfusion(counts.confusion, scale);
  const patterns = cross.flatMap((row, i) =>
    row.flatMap((units, j): UnitPattern[] => {
      if (units === 0) return [];
      return [{ counts: scale.map((_, k) => Number(k === i) + Number(k === j)), ratings: 2, units }];
    }),
  );
  const table = { categories: scale.length, patterns };
  return {
    fleiss: toStatistic(computeFleissKappa(table)),
    alpha: computeKrippendorffAlphas(table, ["nominal", "ordinal", "interval"], options),
    ac1: toStatistic(computeGwetAc(table)),
  };
}
