/**
 * The chance that a Poisson count of this mean is `count` or more: one less the sum of its first terms (any textbook; from
 * memory, tested against a published table). It bounds the same chance for a sum of unlike yes-or-no trials wherever `count`
 * exceeds the mean by one or more (Hoeffding 1956, Ann. Math. Stat. 27, 713-721; from memory). `count` of 0 gives 1.
 * RangeError for a negative or broken mean or count.
 */
export function computePoissonTail(count: number, mean: number): number {
  if (!(mean >= 0 && Number.isFinite(mean)) || !(Number.isInteger(count) && count >= 0)) {
    throw new RangeError(`computePoissonTail: ${count} of a mean of ${mean}`);
  }
  if (count === 0) return 1;
  if (mean === 0) return 0;
  // Summed from `count` upwards, so that a small tail is not lost in the rounding of one less a sum near one.
  let term = Math.exp(count * Math.log(mean) - mean - sumLogs(count));
  let tail = 0;
  for (let k = count; term > tail * 1e-17 || k < mean; k += 1) {
    tail += term;
    term *= mean / (k + 1);
  }
  return Math.min(1, tail);
}

/** log(n!). */
function sumLogs(n: number): number {
  let sum = 0;
  for (let k = 2; k <= n; k += 1) sum += Math.log(k);
  return sum;
}
