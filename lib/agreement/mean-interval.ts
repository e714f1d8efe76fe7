import { computeT975 } from "@/lib/agreement/f-quantile";
import { isDefined, type Statistic, toUndefined } from "@/lib/agreement/statistic";
import { computeWilsonInterval } from "@/lib/agreement/wilson-interval";

/** What is kept of a list of numbers so that its mean and spread can be found again and lists can be added up. */
export interface MeanSums {
  readonly count: number;
  readonly sum: number;
  readonly sumOfSquares: number;
}

/** What single values can be, for cutting the interval of their mean and for lists that show no spread. */
export interface MeanRange {
  readonly least: number;
  readonly most: number;
  /** How far from the others a value is supposed to lie that was not met yet, where all values met are equal. */
  readonly unseen: number;
}

/** Half the width of the interval; see `computeMeanInterval`. */
function computeHalfWidth(sums: MeanSums, range: MeanRange): number {
  const { count, sum, sumOfSquares } = sums;
  if (count < 2) return range.most - range.least;
  const squares = Math.max(0, sumOfSquares - (sum * sum) / count);
  if (squares > 1e-12 * Math.max(1, sumOfSquares)) {
    return computeT975(count - 1) * Math.sqrt(squares / (count - 1) / count);
  }
  const alike = computeWilsonInterval(count, count);
  return range.unseen * (isDefined(alike) ? 1 - alike.low : 1);
}

/**
 * A mean with Student's 95 % interval (Student 1908, Biometrika 6, 1-25), from sums, cut to the range that single
 * values can take. One value only: the interval is that whole range. All values equal: Student's interval would have no
 * width, so it is widened by the share of unlike values that may have gone unmet (1 less Wilson's low end for all of
 * them alike) times `unseen`; this project's own choice. No value: undefined, with `reason`.
 */
export function computeMeanInterval(
  sums: MeanSums,
  range: MeanRange,
  reason = "nothing to average",
): Statistic {
  if (sums.count === 0) return toUndefined(reason);
  const value = sums.sum / sums.count;
  const half = computeHalfWidth(sums, range);
  return {
    value,
    low: Math.max(Math.min(range.least, value), value - half),
    high: Math.min(Math.max(range.most, value), value + half),
  };
}
