import { isDefined, NORMAL_975 } from "@/lib/agreement/statistic";
import { computeWilsonInterval } from "@/lib/agreement/wilson-interval";

/** The limits between which groups of one size fall by chance alone. */
export interface FunnelLimits {
  readonly trials: number;
  readonly low: number;
  readonly high: number;
}

/**
 * 95 % limits of a funnel plot for shares about a common share (Spiegelhalter 2005, Stat. Med. 24, 1185-1202, appendix
 * A.1): groups inside them differ from the whole by no more than chance explains, so they are not to be ranked. The
 * limits are where a group's own Wilson interval would just touch the common share, that is the normal limits
 * `share +- 1.96 sqrt(share (1 - share) / trials)`, cut to [0, 1]. RangeError for a share outside [0, 1] or no trials.
 */
export function computeFunnelLimits(share: number, trials: number): FunnelLimits {
  if (!(share >= 0 && share <= 1) || !(trials > 0)) {
    throw new RangeError(`computeFunnelLimits: share ${share} of ${trials} trials`);
  }
  const half = NORMAL_975 * Math.sqrt((share * (1 - share)) / trials);
  return { trials, low: Math.max(0, share - half), high: Math.min(1, share + half) };
}

/** Where a group lies: beyond the limits only when chance alone is an unlikely reason. No trials: within. */
export function placeInFunnel(hits: number, trials: number, common: number): "below" | "within" | "above" {
  const own = computeWilsonInterval(hits, trials);
  if (!isDefined(own) || (own.low <= common && common <= own.high)) return "within";
  return own.value < common ? "below" : "above";
}
