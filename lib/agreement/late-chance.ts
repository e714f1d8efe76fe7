/**
 * How likely it is, if nothing changed over time, that of `total` hand-ins in order of time none of the first `before` is
 * among the `marked` ones: C(total - before, marked) / C(total, marked), the exact chance that the first marked one comes so
 * late (sampling without replacement; the hypergeometric's zero term). Small: the thing appeared in between. Nothing
 * marked: 1. RangeError where the three do not fit together.
 */
export function computeLateChance(before: number, marked: number, total: number): number {
  const isCount = [before, marked, total].every((count) => Number.isInteger(count) && count >= 0);
  if (!isCount || before + marked > total) {
    throw new RangeError(`computeLateChance: ${before} before ${marked} of ${total}`);
  }
  let chance = 1;
  for (let k = 0; k < marked; k += 1) chance *= (total - before - k) / (total - k);
  return chance;
}
