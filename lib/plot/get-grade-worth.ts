import { GRADED_PROPERTIES, type GradedProperty, type ReferenceGrades } from "@/lib/plot/grades";
import type { Rubric } from "@/lib/plot/rubric";

/**
 * What each property that the reference grades is worth, in points (scoring.md 6), in the order of the properties: those
 * other than clarity share theirs evenly; where there are none, clarity has their points too.
 */
export function getGradeWorth(
  reference: ReferenceGrades,
  { shares }: Pick<Rubric, "shares">,
): ReadonlyMap<GradedProperty, number> {
  const graded = GRADED_PROPERTIES.filter((property) => reference[property] !== undefined);
  const others = graded.length - 1;
  const clarity = shares.clarity + (others === 0 ? shares.otherGrades : 0);
  return new Map(
    graded.map((property) => [property, property === "clarity" ? clarity : shares.otherGrades / others]),
  );
}
