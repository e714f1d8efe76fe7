/** From what was found to points in hundredths (SPEC 6). */
import { CAUSES, type Cause } from "@/lib/plot/mark";
import type { Rubric } from "@/lib/plot/rubric";
import type { Stray } from "@/lib/scoring/find-causes";
import type { GradeRating } from "@/lib/scoring/rate-grades";

/** Half a hundredth that rounding errors have made a hair less than half is still rounded up. */
const ROUNDING_SLACK = 1e-7;

/** Points as a whole number of hundredths, halves up. */
export function toHundredths(points: number): number {
  return Math.floor(points * 100 + 0.5 + ROUNDING_SLACK) + 0;
}

/** What strays take off `F`, 0…1, before the cap and after it. */
export function getDeduction(strays: readonly Stray[], { deductionCap }: Pick<Rubric, "deductionCap">) {
  const charged = strays.reduce((sum, { charge }) => sum + charge, 0) / 100;
  return { charged, deducted: Math.min(charged, deductionCap / 100) };
}

/** The points of a plot's marks, not yet rounded: share * max(0, F - deduction). */
export function getPlotPoints(
  foundShare: number,
  deducted: number,
  { shares }: Pick<Rubric, "shares">,
): number {
  return shares.plot * Math.max(0, foundShare - deducted);
}

/** The sum of the grades' points, not yet rounded. */
export function getGradePoints(grades: readonly GradeRating[]): number {
  return grades.reduce((sum, { earned }) => sum + earned, 0);
}

/** Charges by cause, in the order of the causes; causes without strays are left out. */
export function sumCharges(strays: readonly Stray[]): { cause: Cause; count: number; charge: number }[] {
  return CAUSES.flatMap((cause) => {
    const mine = strays.filter((stray) => stray.cause === cause);
    if (mine.length === 0) return [];
    return [{ cause, count: mine.length, charge: mine.reduce((sum, { charge }) => sum + charge, 0) }];
  });
}

/**
 * Lines whose hundredths add up to the rounded total exactly: each line is the rounded sum up to it less the rounded
 * sum before it, so no line is off by a whole hundredth and a line of nothing stays nothing.
 */
export function roundLines(exact: readonly { readonly what: string; readonly points: number }[]): {
  readonly lines: { what: string; points: number }[];
  readonly total: number;
} {
  let [sum, before] = [0, 0];
  const lines = exact.map(({ what, points }) => {
    sum += points;
    const after = toHundredths(sum);
    const line = { what, points: (after - before) / 100 };
    before = after;
    return line;
  });
  return { lines, total: before / 100 };
}
