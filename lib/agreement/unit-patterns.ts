/**
 * Ratings reduced to what coefficients for any number of raters need: how many raters put a unit in each category.
 * Units with the same counts are kept once, with their number, so that the work grows with the number of different
 * patterns and not with the number of units.
 */
export interface UnitPattern {
  /** `counts[k]`: how many raters put the unit in category k. */
  readonly counts: readonly number[];
  /** Sum of the counts: how many ratings the unit has, at least 1. */
  readonly ratings: number;
  /** How many units look like this. */
  readonly units: number;
}

export interface UnitPatterns {
  /** Length of the full ordered scale; unused categories count. */
  readonly categories: number;
  /** In order of first appearance. */
  readonly patterns: readonly UnitPattern[];
}

/**
 * Groups units by their counts. `units[u][k]` is how many raters put unit u in category k; units without any rating are
 * dropped. No unit: no pattern. RangeError when a row does not have `categories` counts that are whole and not negative.
 */
export function groupUnitPatterns(units: Iterable<readonly number[]>, categories: number): UnitPatterns {
  const groups = new Map<string, { counts: readonly number[]; ratings: number; units: number }>();
  for (const counts of units) {
    if (counts.length !== categories || counts.some((count) => !Number.isInteger(count) || count < 0)) {
      throw new RangeError(`groupUnitPatterns: [${counts}] is not ${categories} counts`);
    }
    const ratings = counts.reduce((sum, count) => sum + count, 0);
    if (ratings === 0) continue;
    const key = counts.join();
    const group = groups.get(key);
    if (group) group.units += 1;
    else groups.set(key, { counts, ratings, units: 1 });
  }
  return { categories, patterns: [...groups.values()] };
}

/**
 * Turns a table `ratings[rater][unit]` of category places, null where a rater left a unit out, into counts per unit.
 * No rater: no unit. RangeError for a place that is not in 0..categories-1.
 */
export function toUnitCounts(
  ratings: readonly (readonly (number | null)[])[],
  categories: number,
): readonly number[][] {
  const length = ratings.reduce((most, row) => Math.max(most, row.length), 0);
  const units = Array.from({ length }, () => new Array<number>(categories).fill(0));
  for (const row of ratings) {
    for (const [unit, place] of row.entries()) {
      if (place === null) continue;
      const counts = units[unit];
      if (!counts || !Number.isInteger(place) || place < 0 || place >= categories) {
        throw new RangeError(`toUnitCounts: ${place} is not a place in a scale of ${categories}`);
      }
      counts[place] = (counts[place] ?? 0) + 1;
    }
  }
  return units;
}
