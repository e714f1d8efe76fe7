/** Where a score lies on the scale of the items, and how much the items tell about it. */
export interface RaschAbility {
  readonly ability: number;
  /** Sum of p (1 - p): the test information there. The standard error is one over its root. */
  readonly information: number;
}

/** Where the search starts, and how far off its answer may be. */
export interface AbilitySearch {
  readonly start?: number;
  readonly tolerance?: number;
}

/**
 * The ability at which `score` right answers are expected from items of the given easiness: the maximum likelihood
 * estimate with the items held fixed (Wright and Stone 1979, ch. 7, from memory; check values 7.2). By Newton's method,
 * kept within a bracket. RangeError unless 0 < score < number of items: those scores lie beyond range.
 */
export function estimateRaschAbility(
  easiness: ArrayLike<number>,
  score: number,
  { start = 0, tolerance = 1e-12 }: AbilitySearch = {},
): RaschAbility {
  if (!(score > 0 && score < easiness.length)) {
    throw new RangeError(`estimateRaschAbility: score ${score} of ${easiness.length} lies beyond range`);
  }
  let [low, high] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  let ability = start;
  for (let i = 0; ; i += 1) {
    const { expected, information } = sumProbabilities(easiness, ability);
    if (expected < score) low = ability;
    else high = ability;
    const newton = ability + Math.max(-3, Math.min(3, (score - expected) / information));
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    const isDone =
      !Number.isFinite(next) || Math.abs(next - ability) <= tolerance * Math.max(1, Math.abs(next));
    if (isDone || i >= 500) return { ability, information };
    ability = next;
  }
}

/** Expected score and test information at an ability. */
function sumProbabilities(easiness: ArrayLike<number>, ability: number) {
  let expected = 0;
  let information = 0;
  for (let i = 0; i < easiness.length; i += 1) {
    const p = 1 / (1 + Math.exp(-(ability + (easiness[i] ?? 0))));
    expected += p;
    information += p * (1 - p);
  }
  return { expected, information };
}
