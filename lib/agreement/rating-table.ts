import { listRatingFaults, listScaleFaults, type Rating, refuseRatings } from "@/lib/agreement/rating";
import { groupUnitPatterns, type UnitPatterns } from "@/lib/agreement/unit-patterns";

/** One grade of an item: places in the lists of raters and of the scale. */
export interface PlacedGrade {
  readonly rater: number;
  readonly grade: number;
}

/** Ratings sorted by item. Items and raters stand in order of first appearance. */
export interface RatingTable {
  readonly scale: readonly string[];
  readonly items: readonly string[];
  readonly raters: readonly string[];
  /** `grades[i]`: the grades of item i, in order of appearance, at most one for each rater. */
  readonly grades: readonly (readonly PlacedGrade[])[];
}

/** The place of a name in a growing list. */
function toPlace(name: string, places: Map<string, number>): number {
  const known = places.get(name);
  if (known !== undefined) return known;
  places.set(name, places.size);
  return places.size - 1;
}

/**
 * Sorts ratings by item and checks them. No rating: an empty table. Throws AppError `bad-input` for a grade that is not
 * on the scale, a second grade by one rater for one item, or a scale without grades or with one named twice.
 */
export function buildRatingTable(ratings: readonly Rating[], scale: readonly string[]): RatingTable {
  const faults = [...listScaleFaults(scale), ...listRatingFaults(ratings, scale)];
  if (faults.length > 0) throw refuseRatings(faults);
  const places = new Map(scale.map((grade, place) => [grade, place]));
  const items = new Map<string, number>();
  const raters = new Map<string, number>();
  const grades: PlacedGrade[][] = [];
  for (const { item, rater, grade } of ratings) {
    const row = toPlace(item, items);
    const ofItem = grades[row] ?? [];
    grades[row] = ofItem;
    ofItem.push({ rater: toPlace(rater, raters), grade: places.get(grade) ?? 0 });
  }
  return { scale, items: [...items.keys()], raters: [...raters.keys()], grades };
}

/** The grades of items that both of exactly two raters graded, as pairs (first rater, second rater) of places. */
export function listRaterPairs(table: RatingTable): (readonly [number, number])[] {
  return table.grades.flatMap((grades) => {
    const first = grades.find(({ rater }) => rater === 0);
    const second = grades.find(({ rater }) => rater === 1);
    return first && second ? [[first.grade, second.grade] as const] : [];
  });
}

/** Counts of each item's grades, grouped; see `groupUnitPatterns`. */
export function toUnitPatterns(table: RatingTable): UnitPatterns {
  const size = table.scale.length;
  const units = table.grades.map((grades) => {
    const counts = new Array<number>(size).fill(0);
    for (const { grade } of grades) counts[grade] = (counts[grade] ?? 0) + 1;
    return counts;
  });
  return groupUnitPatterns(units, size);
}
