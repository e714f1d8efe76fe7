import { estimateRaschAbility } from "@/lib/agreement/rasch-ability";
import {
  computeScoreDistribution,
  computeScoreWithout,
  listRightProbabilities,
  removeItem,
} from "@/lib/agreement/score-distribution";

/** What is expected of persons who sat the same items, given their score. */
export interface ConditionalExpectation {
  /** Log of the elementary symmetric function of that score. */
  readonly logGamma: number;
  /** `right[i]`: the probability that item i was right, given the score. They add up to the score. */
  readonly right: Float64Array;
  /** Ability that fits the score: where the distribution is evaluated, so that the score lies in its middle. */
  readonly ability: number;
  /** Unconditional probabilities at that ability. */
  readonly probabilities: Float64Array;
  readonly distribution: Float64Array;
}

/**
 * Probabilities of right answers given the number of right answers (Rasch 1960; Andersen 1970, J. R. Stat. Soc. B 32,
 * 283-301; Fischer 1974). They do not depend on the ability, so it is chosen to make the score the mean: then nothing
 * underflows. `easiness` of the items sat, 0 < score < their number.
 */
export function computeConditionalExpectation(
  easiness: Float64Array,
  score: number,
  start: number,
): ConditionalExpectation {
  const { ability } = estimateRaschAbility(easiness, score, start);
  const probabilities = listRightProbabilities(easiness, ability);
  const distribution = computeScoreDistribution(probabilities);
  const atScore = distribution[score] ?? 0;
  const right = probabilities.map((p) => (p * computeScoreWithout(distribution, p, score - 1)) / atScore);
  const logFactors = easiness.reduce((sum, value) => sum + softplus(ability + value), 0);
  return {
    logGamma: Math.log(atScore) - score * ability + logFactors,
    right,
    ability,
    probabilities,
    distribution,
  };
}

/** log(1 + exp(x)) without overflow. */
function softplus(x: number): number {
  return x > 0 ? x + Math.log1p(Math.exp(-x)) : Math.log1p(Math.exp(x));
}

/** Up to so many items a person's covariances are worked out exactly. */
export const EXACT_ITEMS = 25;

/**
 * Adds to `information` (a flat square table over all items, `size` wide) the covariances of right answers given the
 * score, for `persons` persons who sat `items`. Exact up to EXACT_ITEMS items; above, by the leading term
 * p q [i = j] - p_i q_i p_j q_j / sum(p q), whose relative error falls as one over the number of items. True when exact.
 */
export function addConditionalInformation(
  information: Float64Array,
  size: number,
  items: readonly number[],
  score: number,
  persons: number,
  expectation: ConditionalExpectation,
): boolean {
  const isExact = items.length <= EXACT_ITEMS;
  const covariances = isExact
    ? listExactCovariances(score, expectation)
    : listLeadingCovariances(expectation);
  const width = items.length;
  for (let a = 0; a < width; a += 1) {
    const row = (items[a] ?? 0) * size;
    for (let b = 0; b < width; b += 1) {
      const cell = row + (items[b] ?? 0);
      information[cell] = (information[cell] ?? 0) + persons * (covariances[a * width + b] ?? 0);
    }
  }
  return isExact;
}

function listExactCovariances(score: number, expectation: ConditionalExpectation): Float64Array {
  const { probabilities, distribution, right } = expectation;
  const width = right.length;
  const covariances = new Float64Array(width * width);
  for (let a = 0; a < width; a += 1) {
    const [pA, rightA] = [probabilities[a] ?? 0, right[a] ?? 0];
    const withoutA = removeItem(distribution, pA);
    covariances[a * width + a] = rightA * (1 - rightA);
    for (let b = a + 1; b < width; b += 1) {
      const pB = probabilities[b] ?? 0;
      const both =
        score < 2 ? 0 : (pA * pB * computeScoreWithout(withoutA, pB, score - 2)) / (distribution[score] ?? 0);
      covariances[a * width + b] = both - rightA * (right[b] ?? 0);
      covariances[b * width + a] = both - rightA * (right[b] ?? 0);
    }
  }
  return covariances;
}

function listLeadingCovariances({ probabilities }: ConditionalExpectation): Float64Array {
  const width = probabilities.length;
  const spread = probabilities.map((p) => p * (1 - p));
  const total = spread.reduce((sum, value) => sum + value, 0);
  const covariances = new Float64Array(width * width);
  for (let a = 0; a < width; a += 1) {
    const scaled = (spread[a] ?? 0) / total;
    for (let b = 0; b < width; b += 1) covariances[a * width + b] = -scaled * (spread[b] ?? 0);
    covariances[a * width + a] = (covariances[a * width + a] ?? 0) + (spread[a] ?? 0);
  }
  return covariances;
}
