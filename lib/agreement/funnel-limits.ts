import { NORMAL_975 } from "@/lib/agreement/statistic";

/** The limits between which groups of one size fall by chance alone. */
export interface FunnelLimits {
  readonly trials: number;
  readonly low: number;
  readonly high: number;
}

/**
 * 95 % limits of a funnel plot for shares about a common share (Spiegelhalter 2005, Stat. Med. 24, 1185-1202, appendix
 * A.1): groups inside them differ from the whole by no more than chance explains, so they are not to be ranked. The
 * normal limits `share +- 1.96 sqrt(share (1 - share) designEffect / trials)`, cut to [0, 1]; with a design effect of 1 they
 * lie where a group's own Wilson interval would just touch the common share. `designEffect`: `computePooledDesignEffect`.
 * RangeError for a share outside [0, 1], no trials, or a design effect below 1.
 */
export function computeFunnelLimits(share: number, trials: number, designEffect = 1): FunnelLimits {
  if (!(share >= 0 && share <= 1) || !(trials > 0) || !(designEffect >= 1)) {
    throw new RangeError(`computeFunnelLimits: share ${share} of ${trials} trials, effect ${designEffect}`);
  }
  const half = NORMAL_975 * Math.sqrt((share * (1 - share) * designEffect) / trials);
  return { trials, low: Math.max(0, share - half), high: Math.min(1, share + half) };
}

export type FunnelPlace = "below" | "within" | "above";

/** Where a group lies: beyond the limits only when chance alone is an unlikely reason. No trials: within. */
export function placeInFunnel(hits: number, trials: number, common: number, designEffect = 1): FunnelPlace {
  if (trials === 0) return "within";
  const { low, high } = computeFunnelLimits(common, trials, designEffect);
  const own = hits / trials;
  return own < low ? "below" : own > high ? "above" : "within";
}
