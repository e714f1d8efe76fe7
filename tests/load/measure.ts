/** Figures of many measurements. */

export interface Spread {
  readonly count: number;
  readonly p50: number;
  readonly p95: number;
  readonly p99: number;
  readonly max: number;
}

/** The nearest-rank percentile of sorted values (NIST/SEMATECH e-Handbook 7.2.6.2 names the family); NaN for none. */
function getPercentile(sorted: readonly number[], percent: number): number {
  return sorted[Math.max(0, Math.ceil((percent / 100) * sorted.length) - 1)] ?? Number.NaN;
}

/** The spread of values in their own unit; NaN for none. */
export function toSpread(values: readonly number[]): Spread {
  const sorted = [...values].sort((a, b) => a - b);
  return {
    count: sorted.length,
    p50: getPercentile(sorted, 50),
    p95: getPercentile(sorted, 95),
    p99: getPercentile(sorted, 99),
    max: getPercentile(sorted, 100),
  };
}
