import { estimateRaschAbility } from "@/lib/agreement/rasch-ability";
import {
  computeScoreDistribution,
  computeScoreWithout,
  listRightProbabilities,
  removeItem,
  type ScoreDistribution,
} from "@/lib/agreement/score-distribution";

/** What is expected of persons who sat the same items, given their score. */
export interface ConditionalExpectation {
  /** Log of the elementary symmetric function of that score. */
  readonly logGamma: number;
  /** `right[i]`: the probability that item i was right, given the score. They add up to the score. */
  readonly right: Float64Array;
  /** Near the ability that fits the score: where the distribution is evaluated, so that the score lies in its middle. */
  readonly ability: number;
  /** Unconditional probabilities at that ability. */
  readonly probabilities: Float64Array;
  readonly distribution: ScoreDistribution;
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
  const { ability } = estimateRaschAbility(easiness, score, { start, tolerance: 0.01 });
  const probabilities = listRightProbabilities(easiness, ability);
  const distribution = computeScoreDistribution(probabilities);
  const atScore = distribution.values[score] ?? 0;
  const right = new Float64Array(easiness.length);
  let logGamma = Math.log(atScore) - score * ability;
  for (let i = 0; i < easiness.length; i += 1) {
    const [logit, p] = [ability + (easiness[i] ?? 0), probabilities[i] ?? 0];
    right[i] = (p * computeScoreWithout(distribution, p, score - 1)) / atScore;
    logGamma += Math.max(0, logit) + Math.log1p(Math.exp(-Math.abs(logit))); // log(1 + exp(logit)), no overflow
  }
  return { logGamma, right, ability, probabilities, distribution };
}

/** Up to so many items a person's covariances are worked out exactly. */
export const EXACT_ITEMS = 25;

/**
 * Adds to the lower triangle of `information` (a flat square table over all items, `size` wide) the covariances of right
 * answers given the score, for `persons` persons who sat `items` (ascending). Exact up to EXACT_ITEMS items; above, of
 * the form u_i [i = j] - u_i u_j / sum(u), which is what the covariances tend to in long tests (u = p q), with u chosen
 * so that the variances are exact and each row sums to 0, as it must. True when exact.
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
  if (isExact) addExactCovariances(information, size, items, score, persons, expectation);
  else addLongTestCovariances(information, size, items, persons, expectation);
  return isExact;
}

function addExactCovariances(
  information: Float64Array,
  size: number,
  items: readonly number[],
  score: number,
  persons: number,
  { probabilities, distribution, right }: ConditionalExpectation,
): void {
  const atScore = distribution.values[score] ?? 0;
  for (let a = 0; a < items.length; a += 1) {
    const row = (items[a] ?? 0) * size;
    const [pA, rightA] = [probabilities[a] ?? 0, right[a] ?? 0];
    const withoutA = removeItem(distribution, pA);
    for (let b = 0; b <= a; b += 1) {
      const [pB, rightB] = [probabilities[b] ?? 0, right[b] ?? 0];
      const isPair = a !== b && score > 1;
      const together = isPair ? (pA * pB * computeScoreWithout(withoutA, pB, score - 2)) / atScore : 0;
      const cell = row + (items[b] ?? 0);
      const covariance = (a === b ? rightA : together) - rightA * rightB;
      information[cell] = (information[cell] ?? 0) + persons * covariance;
    }
  }
}

function addLongTestCovariances(
  information: Float64Array,
  size: number,
  items: readonly number[],
  persons: number,
  { right }: ConditionalExpectation,
): void {
  const variances = right.map((p) => p * (1 - p));
  let spread = variances;
  let total = 0;
  for (let round = 0; round < 12; round += 1) {
    total = spread.reduce((sum, value) => sum + value, 0);
    const divisor = total;
    spread = spread.map((value, i) => (variances[i] ?? 0) + (value * value) / divisor);
  }
  for (let a = 0; a < items.length; a += 1) {
    const row = (items[a] ?? 0) * size;
    const scaled = (-persons * (spread[a] ?? 0)) / total;
    for (let b = 0; b < a; b += 1) {
      const cell = row + (items[b] ?? 0);
      information[cell] = (information[cell] ?? 0) + scaled * (spread[b] ?? 0);
    }
    const diagonal = row + (items[a] ?? 0);
    information[diagonal] = (information[diagonal] ?? 0) + persons * (variances[a] ?? 0);
  }
}
