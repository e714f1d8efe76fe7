import { type BootstrapInterval, computeBootstrapIntervals } from "@/lib/agreement/bootstrap-interval";
import { listPairableUnits, type PairableUnits, tallyCoincidences } from "@/lib/agreement/coincidences";
import { isDefined, type Statistic, toUndefined } from "@/lib/agreement/statistic";
import type { UnitPatterns } from "@/lib/agreement/unit-patterns";
import { computeWilsonInterval } from "@/lib/agreement/wilson-interval";
import { createSeededRandom } from "@/lib/base/seeded-random";

export type AlphaMetric = "nominal" | "ordinal" | "interval" | "ratio";

export interface AlphaOptions {
  /** The number that each category stands for, for interval and ratio; its place in the scale unless given. */
  readonly values?: readonly number[];
  readonly seed?: number | string;
  readonly resamples?: number;
}

/** Row sums of a flat square table. */
function sumRows(table: Float64Array, size: number): Float64Array {
  const sums = new Float64Array(size);
  for (let row = 0; row < size; row += 1) {
    let sum = 0;
    for (let i = row * size; i < (row + 1) * size; i += 1) sum += table[i] ?? 0;
    sums[row] = sum;
  }
  return sums;
}

/**
 * Where the categories lie for a metric (Krippendorff 2011, part C, "metric differences"): differences are squared
 * distances. For ordinal data that is the middle of each category's ranks, since sum(n_c..n_k) - (n_c + n_k) / 2 is the
 * distance of the middles.
 */
function listPoints(metric: AlphaMetric, margins: Float64Array, values: readonly number[]): Float64Array {
  if (metric !== "ordinal") return Float64Array.from(values);
  let below = 0;
  return margins.map((margin) => {
    below += margin;
    return below - margin / 2;
  });
}

function computeDifference(metric: AlphaMetric, first: number, second: number): number {
  if (metric === "nominal") return 1;
  if (metric === "ratio") return first + second === 0 ? 0 : ((first - second) / (first + second)) ** 2;
  return (first - second) * (first - second);
}

/** Alpha from coincidences: 1 - (n - 1) sum(o d) / sum(n n d); NaN where the expected disagreement is 0. */
function computeAlphaValue(table: Float64Array, metric: AlphaMetric, values: readonly number[]): number {
  const size = values.length;
  const margins = sumRows(table, size);
  const points = listPoints(metric, margins, values);
  const total = margins.reduce((sum, margin) => sum + margin, 0);
  let observed = 0;
  let expected = 0;
  for (let c = 0; c < size; c += 1) {
    const margin = margins[c] ?? 0;
    if (margin === 0) continue;
    for (let k = c + 1; k < size; k += 1) {
      const difference = computeDifference(metric, points[c] ?? 0, points[k] ?? 0);
      observed += 2 * (table[c * size + k] ?? 0) * difference;
      expected += 2 * margin * (margins[k] ?? 0) * difference;
    }
  }
  return expected > 0 ? 1 - ((total - 1) * observed) / expected : Number.NaN;
}

/** Low end where every pair of ratings agrees; see `computeKrippendorffAlphas`. */
function computeLowOfFullAgreement(pairable: PairableUnits, table: Float64Array): number {
  const units = pairable.units.reduce((sum, count) => sum + count, 0);
  const margins = sumRows(table, pairable.categories);
  const total = margins.reduce((sum, margin) => sum + margin, 0);
  const expected = margins.reduce((sum, margin) => sum + margin * (margin - 1), 0) / (total * (total - 1));
  const alike = computeWilsonInterval(units, units);
  return isDefined(alike) ? Math.max(-1, (alike.low - expected) / (1 - expected)) : -1;
}

function toAlpha(value: number, interval: BootstrapInterval | null, lowOfFullAgreement: number): Statistic {
  if (Number.isNaN(value)) {
    return toUndefined("only one grade was given, so agreement cannot be told from chance");
  }
  const floor = Math.min(-1, value);
  if (interval === null) return { value, low: floor, high: 1 };
  if (value === 1) return { value, low: Math.max(floor, lowOfFullAgreement), high: 1 };
  if (interval.high - interval.low < 1e-12) return { value, low: floor, high: 1 };
  return { value, low: Math.min(value, interval.low), high: Math.max(value, interval.high) };
}

/**
 * Krippendorff's alpha under one or more metrics, for any number of raters and with ratings missing (Krippendorff 2011,
 * "Computing Krippendorff's Alpha-Reliability", part C; units with fewer than two ratings drop out).
 *
 * No closed form gives its spread for all metrics, so the interval is a seeded percentile bootstrap over units (raters
 * held fixed); all metrics share the resamples. Where all agree, every resample does, and the low end is that of
 * `toChanceCorrected` with chance agreement sum n_c (n_c - 1) / (n (n - 1)). Where resamples are too few or all alike,
 * the interval is the whole of [-1, 1].
 *
 * Undefined where no unit has two ratings and where only one category was used. RangeError when `values` does not have
 * one number for each category.
 */
export function computeKrippendorffAlphas<Metric extends AlphaMetric>(
  units: UnitPatterns,
  metrics: readonly Metric[],
  options: AlphaOptions = {},
): Record<Metric, Statistic> {
  const toRecord = (give: (metric: Metric, m: number) => Statistic) =>
    Object.fromEntries(metrics.map((metric, m) => [metric, give(metric, m)])) as Record<Metric, Statistic>;
  const values = options.values ?? Array.from({ length: units.categories }, (_, place) => place);
  if (values.length !== units.categories)
    throw new RangeError("alpha: one value for each category is needed");
  const pairable = listPairableUnits(units);
  if (pairable.units.length === 0) return toRecord(() => toUndefined("no item was rated by two raters"));
  const table = tallyCoincidences(pairable, pairable.units);
  const scratch = new Float64Array(table.length);
  const intervals = computeBootstrapIntervals({
    units: pairable.units,
    statistics: metrics.length,
    measure: (drawn, into) => {
      tallyCoincidences(pairable, drawn, scratch);
      for (const [m, metric] of metrics.entries()) into[m] = computeAlphaValue(scratch, metric, values);
    },
    random: createSeededRandom(options.seed ?? "agreement"),
    ...(options.resamples === undefined ? {} : { resamples: options.resamples }),
  });
  const low = computeLowOfFullAgreement(pairable, table);
  return toRecord((metric, m) =>
    toAlpha(computeAlphaValue(table, metric, values), intervals[m] ?? null, low),
  );
}

/** Krippendorff's alpha under one metric; see `computeKrippendorffAlphas`. */
export function computeKrippendorffAlpha(
  units: UnitPatterns,
  metric: AlphaMetric,
  options: AlphaOptions = {},
): Statistic {
  return computeKrippendorffAlphas(units, [metric], options)[metric];
}
