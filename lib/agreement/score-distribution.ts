/** The distribution of a test score that is a sum of independent right answers, and what it is without one item. */

/** Below this a probability is dropped from either end: far too little to show in any sum, and it keeps the work short. */
const NEGLIGIBLE = 1e-30;

/** `values[s]`: the probability of s right answers; 0 outside `low`..`high`. */
export interface ScoreDistribution {
  readonly values: Float64Array;
  readonly low: number;
  readonly high: number;
}

/** Right answers' probabilities under the Rasch model: 1 / (1 + exp(-(ability + easiness))). */
export function listRightProbabilities(easiness: ArrayLike<number>, ability: number): Float64Array {
  const probabilities = new Float64Array(easiness.length);
  for (let i = 0; i < easiness.length; i += 1) {
    probabilities[i] = 1 / (1 + Math.exp(-(ability + (easiness[i] ?? 0))));
  }
  return probabilities;
}

/**
 * Probabilities of 0..length right answers, by convolution (the recursion of the elementary symmetric functions, Fischer
 * 1974, in normalised form, which neither over- nor underflows). Those below 1e-30 are dropped. No item: [1].
 */
export function computeScoreDistribution(probabilities: Float64Array): ScoreDistribution {
  const values = new Float64Array(probabilities.length + 1);
  values[0] = 1;
  let low = 0;
  let high = 0;
  for (let i = 0; i < probabilities.length; i += 1) {
    const p = probabilities[i] ?? 0;
    const q = 1 - p;
    high += 1;
    for (let s = high; s > low; s -= 1) values[s] = (values[s] ?? 0) * q + (values[s - 1] ?? 0) * p;
    values[low] = (values[low] ?? 0) * q;
    while (low < high && (values[low] ?? 0) < NEGLIGIBLE) values[low++] = 0;
    while (high > low && (values[high] ?? 0) < NEGLIGIBLE) values[high--] = 0;
  }
  return { values, low, high };
}

/**
 * The probability of `score` right answers without one item whose probability is `p`. Unwinds the convolution from the
 * end from which errors shrink: upwards for p <= 1/2, downwards above (the plain difference algorithm is unstable).
 */
export function computeScoreWithout(
  { values, low, high }: ScoreDistribution,
  p: number,
  score: number,
): number {
  let without = 0;
  if (p <= 0.5) {
    const [scale, ratio] = [1 / (1 - p), p / (1 - p)];
    for (let s = low; s <= score; s += 1) without = (values[s] ?? 0) * scale - ratio * without;
  } else {
    const [scale, ratio] = [1 / p, (1 - p) / p];
    for (let s = high; s > score; s -= 1) without = (values[s] ?? 0) * scale - ratio * without;
  }
  return without;
}

/** The whole distribution without one item whose probability is `p`; see `computeScoreWithout`. */
export function removeItem({ values, low, high }: ScoreDistribution, p: number): ScoreDistribution {
  const without = new Float64Array(values.length - 1);
  let last = 0;
  if (p <= 0.5) {
    for (let s = low; s < without.length && s <= high; s += 1) {
      last = ((values[s] ?? 0) - p * last) / (1 - p);
      without[s] = last;
    }
  } else {
    for (let s = high; s > 0 && s >= low; s -= 1) {
      last = ((values[s] ?? 0) - (1 - p) * last) / p;
      without[s - 1] = last;
    }
  }
  return { values: without, low: Math.max(0, low - 1), high: Math.min(high, without.length - 1) };
}
