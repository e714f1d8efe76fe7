import { type AgreementWeights, createAgreementWeights } from "@/lib/agreement/agreement-weights";
import { toChanceCorrected } from "@/lib/agreement/chance-corrected";
import { type Estimate, isDefined, type Quantity, toUndefined } from "@/lib/agreement/statistic";

/** `table[i][j]`: how many units the first rater put in category i and the second in category j. Square. */
export type CrossTable = readonly (readonly number[])[];

interface KappaParts {
  readonly units: number;
  readonly observed: number;
  readonly expected: number;
  readonly expectedExact: number;
  readonly variance: number;
  readonly varianceUnderChance: number;
}

function sumColumns(table: CrossTable, column: number): number {
  return table.reduce((sum, row) => sum + (row[column] ?? 0), 0);
}

/** Steps of Fleiss, Cohen and Everitt 1969: agreement, chance agreement, and both variances of weighted kappa. */
function computeKappaParts(table: CrossTable, weights: AgreementWeights): KappaParts {
  const size = table.length;
  const units = table.flat().reduce((sum, count) => sum + count, 0);
  const rows = table.map((row) => row.reduce((sum, count) => sum + count, 0) / units);
  const columns = table.map((_, j) => sumColumns(table, j) / units);
  const at = (list: readonly number[], i: number) => list[i] ?? 0;
  const weight = (i: number, j: number) => weights[i]?.[j] ?? 0;
  const indices = Array.from({ length: size }, (_, i) => i);
  const rowMeans = indices.map((i) => indices.reduce((sum, j) => sum + at(columns, j) * weight(i, j), 0));
  const columnMeans = indices.map((j) => indices.reduce((sum, i) => sum + at(rows, i) * weight(i, j), 0));

  let observed = 0;
  let expected = 0;
  for (const i of indices) {
    for (const j of indices) {
      observed += (weight(i, j) * (table[i]?.[j] ?? 0)) / units;
      expected += weight(i, j) * at(rows, i) * at(columns, j);
    }
  }
  let seen = 0;
  let byChance = 0;
  for (const i of indices) {
    for (const j of indices) {
      const means = at(rowMeans, i) + at(columnMeans, j);
      const share = (table[i]?.[j] ?? 0) / units;
      seen += share * (weight(i, j) * (1 - expected) - means * (1 - observed)) ** 2;
      byChance += at(rows, i) * at(columns, j) * (weight(i, j) - means) ** 2;
    }
  }
  const centre = observed * expected - 2 * expected + observed;
  // A difference of nearly equal numbers: what is left of it below this is rounding.
  const keep = (difference: number) => (difference < 1e-12 ? 0 : difference);
  return {
    units,
    observed,
    expected,
    expectedExact: indices.reduce((sum, i) => sum + at(rows, i) * at(columns, i), 0),
    variance: keep(seen - centre ** 2) / (units * (1 - expected) ** 4),
    varianceUnderChance: keep(byChance - expected ** 2) / (units * (1 - expected) ** 2),
  };
}

function requireSquare(table: CrossTable, weights: AgreementWeights): void {
  const size = table.length;
  const isSquare = (rows: readonly (readonly number[])[]) =>
    rows.length === size && rows.every((row) => row.length === size);
  if (!isSquare(table) || !isSquare(weights)) {
    throw new RangeError("kappa: the table and its weights must be square and of one size");
  }
}

/** From so many units on the large-sample error is taken at its word. */
const LARGE_SAMPLE = 30;

/**
 * Cohen's kappa for two raters (Cohen 1960, Educ. Psychol. Meas. 20, 37-46), weighted by any agreement weights (Cohen
 * 1968, Psychol. Bull. 70, 213-220), with the large-sample standard error of Fleiss, Cohen and Everitt 1969 (Psychol.
 * Bull. 72, 323-327; formulas from memory, values tested) and the interval on it (see `toChanceCorrected`): z, as is usual, from 30 units on, and t with fewer, since the
 * error is a large-sample one. Without weights: unweighted.
 * Empty table: undefined. One and the same category only: undefined. RangeError when table or weights are not square.
 */
export function computeCohenKappa(
  table: CrossTable,
  weights: AgreementWeights = createAgreementWeights("identity", table.length),
): Estimate {
  requireSquare(table, weights);
  if (table.flat().every((count) => count === 0)) return toUndefined("no unit was rated by both raters");
  const { variance, ...parts } = computeKappaParts(table, weights);
  const degrees = parts.units < LARGE_SAMPLE ? Math.max(1, parts.units - 1) : "normal";
  return toChanceCorrected({ ...parts, standardError: Math.sqrt(variance), degrees });
}

/**
 * The standard error of kappa if the two raters were independent, for a test against chance (Fleiss, Cohen and Everitt
 * 1969; formula from memory, value tested). Undefined where kappa is. RangeError when table or weights are not square.
 */
export function computeKappaErrorUnderChance(
  table: CrossTable,
  weights: AgreementWeights = createAgreementWeights("identity", table.length),
): Quantity {
  const kappa = computeCohenKappa(table, weights);
  if (!isDefined(kappa)) return kappa;
  return { value: Math.sqrt(computeKappaParts(table, weights).varianceUnderChance) };
}
