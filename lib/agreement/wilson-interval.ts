import { NORMAL_975, type Statistic, toUndefined } from "@/lib/agreement/statistic";

/**
 * A share with its 95 % score interval (Wilson 1927, J. Am. Stat. Assoc. 22, 209-212; equation as given by Newcombe
 * 1998, Stat. Med. 17, 857-872, method 3). `hits` of `trials`, 0 <= hits <= trials; fractions are allowed, for an
 * effective number of trials. The interval never leaves [0, 1] and never has zero width. No trials: undefined, with
 * `reason`. RangeError when hits is not in 0..trials.
 */
export function computeWilsonInterval(hits: number, trials: number, reason = "nothing to count"): Statistic {
  if (!(hits >= 0 && hits <= trials)) {
    throw new RangeError(`computeWilsonInterval: ${hits} of ${trials} is not a share`);
  }
  if (trials === 0) return toUndefined(reason);
  const share = hits / trials;
  const zz = NORMAL_975 * NORMAL_975;
  const centre = (hits + zz / 2) / (trials + zz);
  const half = (NORMAL_975 / (trials + zz)) * Math.sqrt(trials * share * (1 - share) + zz / 4);
  return {
    value: share,
    low: hits === 0 ? 0 : Math.max(0, Math.min(share, centre - half)),
    high: hits === trials ? 1 : Math.min(1, Math.max(share, centre + half)),
  };
}
