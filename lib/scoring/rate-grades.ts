import { getGradeWorth } from "@/lib/plot/get-grade-worth";
import type { GradedProperty, PlotGrades, ReferenceGrades, Scales } from "@/lib/plot/grades";
import type { Rubric } from "@/lib/plot/rubric";

/** What one graded property is worth and what was earned of it, in points, not yet rounded. */
export interface GradeRating {
  readonly property: GradedProperty;
  readonly reference: string;
  /** Null for a grade that was not given. */
  readonly given: string | null;
  /** Signed: how many steps the given grade lies below the reference's (worse) or above it (negative, better). */
  readonly steps: number | null;
  readonly share: number;
  readonly earned: number;
  /** Why an instructor gave it this much (SPEC 10.5). */
  readonly ruled?: { readonly reason: string };
}

/** Credit by steps from the reference; beyond the rubric's list there is none. */
function rateSteps(steps: number | null, gradeCredit: readonly number[]): number {
  return steps === null ? 0 : (gradeCredit[Math.abs(steps)] ?? 0);
}

/**
 * Every property that the reference grades, in the order clarity, colour, polish, symmetry, fluorescence (SPEC 6.6).
 * Those other than clarity share their points evenly; where there are none, clarity has their points too.
 */
export function rateGrades(
  reference: ReferenceGrades,
  given: PlotGrades,
  { shares, gradeCredit }: Pick<Rubric, "shares" | "gradeCredit">,
  scales: Scales,
): GradeRating[] {
  return [...getGradeWorth(reference, { shares })].map(([property, share]) => {
    const right = reference[property] ?? "";
    const said = given[property] ?? null;
    const [at, saidAt] = [scales[property].indexOf(right), scales[property].indexOf(said ?? "")];
    const steps = said === null || at < 0 || saidAt < 0 ? null : saidAt - at;
    return {
      property,
      reference: right,
      given: said,
      steps,
      share,
      earned: share * rateSteps(steps, gradeCredit),
    };
  });
}
