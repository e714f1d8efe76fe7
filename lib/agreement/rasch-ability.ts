import { listRightProbabilities } from "@/lib/agreement/score-distribution";

/** Where a score lies on the scale of the items, and how much the items tell about it. */
export interface RaschAbility {
  readonly ability: number;
  /** Sum of p (1 - p): the test information there. The standard error is one over its root. */
  readonly information: number;
}

/**
 * The ability at which `score` right answers are expected from items of the given easiness: the maximum likelihood
 * estimate with the items held fixed (Wright and Stone 1979, ch. 7, from memory; check values 7.2). By Newton's method,
 * kept within a bracket. RangeError unless 0 < score < number of items: those scores lie beyond range.
 */
export function estimateRaschAbility(easiness: ArrayLike<number>, score: number, start = 0): RaschAbility {
  if (!(score > 0 && score < easiness.length)) {
    throw new RangeError(`estimateRaschAbility: score ${score} of ${easiness.length} lies beyond range`);
  }
  const values = Array.from(easiness);
  const edge = Math.log(score / (easiness.length - score));
  let low = edge - Math.max(...values);
  let high = edge - Math.min(...values);
  let ability = Math.min(high, Math.max(low, start));
  let information = 0;
  for (let i = 0; i < 200; i += 1) {
    const probabilities = listRightProbabilities(easiness, ability);
    const expected = probabilities.reduce((sum, p) => sum + p, 0);
    information = probabilities.reduce((sum, p) => sum + p * (1 - p), 0);
    if (expected < score) low = ability;
    else high = ability;
    const newton = ability + (score - expected) / information;
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - ability) < 1e-13 * Math.max(1, Math.abs(ability))) break;
    ability = next;
  }
  return { ability, information };
}
