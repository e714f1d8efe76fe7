/**
 * What a statistic of this folder looks like. A statistic that the data cannot carry is a value too: it says why.
 * All intervals are at 95 %.
 */

/** Says in plain words why there is no number. */
export interface UndefinedStatistic {
  readonly undefined: string;
}

/** A number without an interval, or the reason why there is none. */
export type Quantity = { readonly value: number } | UndefinedStatistic;

/** A number with its 95 % interval, or the reason why there is none (the JSON of the `agreement` command). */
export type Statistic =
  | { readonly value: number; readonly low: number; readonly high: number }
  | UndefinedStatistic;

/** A statistic whose interval rests on a standard error. */
export type Estimate =
  | { readonly value: number; readonly standardError: number; readonly low: number; readonly high: number }
  | UndefinedStatistic;

/** The 0.975 quantile of the standard normal distribution (tabulated constant, from memory; tested against erf). */
export const NORMAL_975 = 1.959963984540054;

/** Wraps the reason why a statistic has no value. */
export function toUndefined(reason: string): UndefinedStatistic {
  return { undefined: reason };
}

/** True where the statistic has a value. */
export function isDefined<T extends Quantity>(statistic: T): statistic is Exclude<T, UndefinedStatistic> {
  return "value" in statistic;
}

/** Drops the standard error of an estimate, so that exactly `value`, `low`, `high` (or the reason) remain. */
export function toStatistic(estimate: Statistic | Estimate): Statistic {
  return isDefined(estimate)
    ? { value: estimate.value, low: estimate.low, high: estimate.high }
    : toUndefined(estimate.undefined);
}
