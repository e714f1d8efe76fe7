/** The distribution of a test score that is a sum of independent right answers, and what it is without one item. */

/** Below this a probability is dropped from either end of a distribution, so that no subnormal number slows the work. */
const NEGLIGIBLE = 1e-150;

/** Right answers' probabilities under the Rasch model: 1 / (1 + exp(-(ability + easiness))). */
export function listRightProbabilities(easiness: ArrayLike<number>, ability: number): Float64Array {
  return Float64Array.from(easiness, (value) => 1 / (1 + Math.exp(-(ability + value))));
}

/**
 * `distribution[s]`: the probability of s right answers, s = 0..length, by convolution (the recursion of the elementary
 * symmetric functions, Fischer 1974, in normalised form, which neither over- nor underflows). No item: [1].
 */
export function computeScoreDistribution(probabilities: Float64Array): Float64Array {
  const distribution = new Float64Array(probabilities.length + 1);
  distribution[0] = 1;
  let low = 0;
  let high = 0;
  for (const p of probabilities) {
    high += 1;
    for (let s = high; s > low; s -= 1) {
      distribution[s] = (distribution[s] ?? 0) * (1 - p) + (distribution[s - 1] ?? 0) * p;
    }
    distribution[low] = (distribution[low] ?? 0) * (1 - p);
    while (low < high && (distribution[low] ?? 0) < NEGLIGIBLE) distribution[low++] = 0;
    while (high > low && (distribution[high] ?? 0) < NEGLIGIBLE) distribution[high--] = 0;
  }
  return distribution;
}

/**
 * The probability of `score` right answers without one item whose probability is `p`. Unwinds the convolution from the
 * end from which errors shrink: upwards for p <= 1/2, downwards above (the plain difference algorithm is unstable).
 */
export function computeScoreWithout(distribution: Float64Array, p: number, score: number): number {
  let without = 0;
  if (p <= 0.5) {
    for (let s = 0; s <= score; s += 1) without = ((distribution[s] ?? 0) - p * without) / (1 - p);
  } else {
    for (let s = distribution.length - 1; s > score; s -= 1) {
      without = ((distribution[s] ?? 0) - (1 - p) * without) / p;
    }
  }
  return without;
}

/** The whole distribution without one item whose probability is `p`; see `computeScoreWithout`. */
export function removeItem(distribution: Float64Array, p: number): Float64Array {
  const without = new Float64Array(distribution.length - 1);
  if (p <= 0.5) {
    let last = 0;
    for (let s = 0; s < without.length; s += 1) {
      last = ((distribution[s] ?? 0) - p * last) / (1 - p);
      without[s] = last;
    }
  } else {
    let last = 0;
    for (let s = without.length; s > 0; s -= 1) {
      last = ((distribution[s] ?? 0) - (1 - p) * last) / p;
      without[s - 1] = last;
    }
  }
  return without;
}
