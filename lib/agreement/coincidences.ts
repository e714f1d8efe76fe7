import type { UnitPattern, UnitPatterns } from "@/lib/agreement/unit-patterns";

/** What one pattern adds to the table of coincidences: `cells[i]` is a place in the flat table, `values[i]` the amount. */
export interface PatternCoincidences {
  readonly cells: readonly number[];
  readonly values: readonly number[];
}

/** The patterns with two ratings or more, each with what it adds. */
export interface PairableUnits {
  readonly categories: number;
  readonly units: readonly number[];
  readonly additions: readonly PatternCoincidences[];
}

function listAdditions(pattern: UnitPattern, categories: number): PatternCoincidences {
  const cells: number[] = [];
  const values: number[] = [];
  for (const [c, first] of pattern.counts.entries()) {
    if (first === 0) continue;
    for (const [k, second] of pattern.counts.entries()) {
      const pairs = first * (second - (c === k ? 1 : 0));
      if (pairs === 0) continue;
      cells.push(c * categories + k);
      values.push(pairs / (pattern.ratings - 1));
    }
  }
  return { cells, values };
}

/**
 * Keeps the units whose values can be paired and prepares their share of the coincidences (Krippendorff 2011,
 * "Computing Krippendorff's Alpha-Reliability", part C: each ordered pair of a unit's values counts 1 / (m - 1)).
 */
export function listPairableUnits(table: UnitPatterns): PairableUnits {
  const pairable = table.patterns.filter((pattern) => pattern.ratings > 1);
  return {
    categories: table.categories,
    units: pairable.map((pattern) => pattern.units),
    additions: pairable.map((pattern) => listAdditions(pattern, table.categories)),
  };
}

/**
 * The table of coincidences, flat, row by row, for `units[p]` units of each pattern. Symmetric; its sum is the number
 * of pairable values. Writes over `into` when given.
 */
export function tallyCoincidences(
  pairable: PairableUnits,
  units: ArrayLike<number>,
  into: Float64Array = new Float64Array(pairable.categories ** 2),
): Float64Array {
  into.fill(0);
  for (let p = 0; p < pairable.additions.length; p += 1) {
    const addition = pairable.additions[p];
    const count = units[p] ?? 0;
    if (!addition || count === 0) continue;
    const { cells, values } = addition;
    for (let i = 0; i < cells.length; i += 1) {
      const cell = cells[i] ?? 0;
      into[cell] = (into[cell] ?? 0) + count * (values[i] ?? 0);
    }
  }
  return into;
}
