import { drawBinomial } from "@/lib/agreement/draw-binomial";
import type { SeededRandom } from "@/lib/base/seeded-random";

/** The end points that a bootstrap found, or null when too few resamples gave a number. */
export interface BootstrapInterval {
  readonly low: number;
  readonly high: number;
  /** Share of the resamples on which the statistic was defined. */
  readonly definedShare: number;
}

export interface BootstrapOptions {
  /** `units[p]`: how many units look like pattern p. */
  readonly units: readonly number[];
  /** How many statistics `measure` writes. */
  readonly statistics: number;
  /** Writes each statistic of a resample into `into`, NaN where it is undefined. `drawn[p]` units of pattern p. */
  readonly measure: (drawn: Uint32Array, into: Float64Array) => void;
  readonly random: SeededRandom;
  readonly resamples?: number;
}

/** The quantile of a sorted, non-empty list, by linear interpolation between order statistics (Hyndman and Fan's 7). */
export function computeSortedQuantile(sorted: readonly number[], probability: number): number {
  const place = probability * (sorted.length - 1);
  const below = sorted[Math.floor(place)] ?? Number.NaN;
  const above = sorted[Math.ceil(place)] ?? Number.NaN;
  return below + (above - below) * (place - Math.floor(place));
}

function toInterval(values: readonly number[], resamples: number): BootstrapInterval | null {
  const definedShare = values.length / resamples;
  if (definedShare < 0.5) return null;
  const sorted = [...values].sort((a, b) => a - b);
  return {
    low: computeSortedQuantile(sorted, 0.025),
    high: computeSortedQuantile(sorted, 0.975),
    definedShare,
  };
}

/** Draws one resample of all units into `drawn`; which way is quicker depends on how alike the units are. */
function createResampler(units: readonly number[], total: number, random: SeededRandom) {
  if (units.length * 8 < total) {
    return (drawn: Uint32Array) => {
      let [unitsLeft, drawsLeft] = [total, total];
      for (const [p, count] of units.entries()) {
        const here = drawBinomial(random, drawsLeft, count / unitsLeft);
        drawn[p] = here;
        unitsLeft -= count;
        drawsLeft -= here;
      }
    };
  }
  const patternOf = Uint32Array.from(units.flatMap((count, p) => new Array<number>(count).fill(p)));
  return (drawn: Uint32Array) => {
    drawn.fill(0);
    for (let i = 0; i < total; i += 1) {
      const p = patternOf[random.int(total)] ?? 0;
      drawn[p] = (drawn[p] ?? 0) + 1;
    }
  };
}

/**
 * Percentile bootstrap intervals at 95 % (Efron 1979, Ann. Stat. 7, 1-26; Efron and Tibshirani 1993, ch. 13) of one or
 * more statistics that share their resamples: as many units as there are, drawn with replacement, 1000 times unless told
 * otherwise. Units alike are drawn by their number (a multinomial draw), so many units of few patterns cost little. The
 * same random stream gives the same interval. Resamples on which a statistic is undefined are left out of that
 * statistic's interval; null when they are more than half, or when there are fewer than two units.
 */
export function computeBootstrapIntervals(options: BootstrapOptions): readonly (BootstrapInterval | null)[] {
  const { units, statistics, measure, random, resamples = 1000 } = options;
  const values = Array.from({ length: statistics }, () => [] as number[]);
  const total = units.reduce((sum, count) => sum + count, 0);
  if (total < 2) return values.map(() => null);
  const resample = createResampler(units, total, random);
  const drawn = new Uint32Array(units.length);
  const into = new Float64Array(statistics);
  for (let sample = 0; sample < resamples; sample += 1) {
    resample(drawn);
    measure(drawn, into);
    for (const [s, value] of into.entries()) if (!Number.isNaN(value)) values[s]?.push(value);
  }
  return values.map((list) => toInterval(list, resamples));
}
