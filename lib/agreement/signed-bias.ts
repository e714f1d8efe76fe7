import { computeMeanInterval } from "@/lib/agreement/mean-interval";
import type { Statistic } from "@/lib/agreement/statistic";

/**
 * Signed bias in steps of the scale: the mean of plotted less reference over pairs (reference, plotted) of places in
 * a scale of `scaleLength` grades, best first; so a positive bias is harsh, a negative one lenient. With Student's
 * interval of paired differences (see `computeMeanInterval`). No pair: undefined.
 */
export function computeSignedBias(
  pairs: readonly (readonly [number, number])[],
  scaleLength: number,
): Statistic {
  let sum = 0;
  let sumOfSquares = 0;
  for (const [reference, plotted] of pairs) {
    sum += plotted - reference;
    sumOfSquares += (plotted - reference) ** 2;
  }
  const most = Math.max(0, scaleLength - 1);
  const range = { least: 0 - most, most, unseen: Math.min(1, most) };
  return computeMeanInterval(
    { count: pairs.length, sum, sumOfSquares },
    range,
    "no pair of grades to compare",
  );
}
