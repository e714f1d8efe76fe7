import { findCholeskyFactor, listInverseDiagonal, solveWithFactor } from "@/lib/agreement/cholesky";
import { addConditionalInformation, computeConditionalExpectation } from "@/lib/agreement/rasch-conditional";
import type { RaschGrouping } from "@/lib/agreement/rasch-groups";

/** The items' places on the scale by conditional maximum likelihood. */
export interface RaschItemFit {
  /** Easiness of each comparable item; sums to 0. */
  readonly easiness: Float64Array;
  readonly standardErrors: Float64Array;
  readonly logLikelihood: number;
  readonly iterations: number;
  /** False where a person sat more items than exact covariances are worked out for. */
  readonly isExact: boolean;
}

/** The conditional log-likelihood at one place, its gradient, and, when asked for, its information. */
interface Evaluation {
  readonly logLikelihood: number;
  readonly gradient: Float64Array;
  readonly isExact: boolean;
}

/** Walks over the groups; `abilities` are starting points, improved in passing. */
function evaluate(
  grouping: RaschGrouping,
  easiness: Float64Array,
  abilities: Float64Array,
  information: Float64Array | null,
): Evaluation {
  const size = easiness.length;
  const gradient = Float64Array.from(grouping.right);
  let logLikelihood = grouping.right.reduce((sum, right, i) => sum + right * (easiness[i] ?? 0), 0);
  let isExact = true;
  information?.fill(0);
  for (const [g, { items, score, persons }] of grouping.groups.entries()) {
    if (score === 0 || score === items.length) continue;
    const own = new Float64Array(items.length);
    for (let a = 0; a < items.length; a += 1) own[a] = easiness[items[a] ?? 0] ?? 0;
    const expectation = computeConditionalExpectation(own, score, abilities[g] ?? 0);
    abilities[g] = expectation.ability;
    logLikelihood -= persons * expectation.logGamma;
    for (let a = 0; a < items.length; a += 1) {
      const item = items[a] ?? 0;
      gradient[item] = (gradient[item] ?? 0) - persons * (expectation.right[a] ?? 0);
    }
    if (information) {
      const exact = addConditionalInformation(information, size, items, score, persons, expectation);
      isExact = isExact && exact;
    }
  }
  return { logLikelihood, gradient, isExact };
}

/** Adds `constant` to every cell: lifts the direction in which all items shift alike, along which nothing is known. */
function liftCommonShift(information: Float64Array, size: number): number {
  let trace = 0;
  for (let i = 0; i < size; i += 1) trace += information[i * size + i] ?? 0;
  const constant = trace / size / size;
  for (let cell = 0; cell < information.length; cell += 1)
    information[cell] = (information[cell] ?? 0) + constant;
  return constant;
}

function requireFactor(information: Float64Array, size: number): Float64Array {
  const factor = findCholeskyFactor(information, size);
  if (!factor) throw new RangeError("fitRaschItems: the items are not comparable with one another");
  return factor;
}

const MOST_ITERATIONS = 500;
const LARGEST_STEP = 2;
const SMALLEST_STEP = 1e-8;
/** Renewing the information costs more than it saves once steps are this short. */
const SHORT_STEP = 0.05;

const findLongest = (step: Float64Array) => step.reduce((most, value) => Math.max(most, Math.abs(value)), 0);

/** A step cut so that no item moves farther than LARGEST_STEP at once. */
function cutStep(step: Float64Array): Float64Array {
  const longest = findLongest(step);
  return longest > LARGEST_STEP ? step.map((value) => (value * LARGEST_STEP) / longest) : step;
}

/** Log odds of each item among those who sat it with a score within range: where the search starts. */
function listLogOdds({ groups, right }: RaschGrouping): Float64Array {
  const seen = new Float64Array(right.length);
  for (const { items, score, persons } of groups) {
    if (score === 0 || score === items.length) continue;
    for (const item of items) seen[item] = (seen[item] ?? 0) + persons;
  }
  return right.map((count, i) => Math.log((count + 0.5) / ((seen[i] ?? 0) - count + 0.5)));
}

/** One step of the search, halved until the likelihood does not fall. */
function takeStep(
  from: Float64Array,
  step: Float64Array,
  logLikelihood: number,
  evaluateAt: (easiness: Float64Array) => Evaluation,
) {
  const lowest = logLikelihood - 1e-9 * Math.abs(logLikelihood);
  for (let share = 1; ; share /= 2) {
    const easiness = from.map((value, i) => value + share * (step[i] ?? 0));
    const reached = evaluateAt(easiness);
    if (reached.logLikelihood >= lowest || share < 1e-6) return { easiness, reached };
  }
}

/**
 * Item easiness in the Rasch model by conditional maximum likelihood (Andersen 1970, J. R. Stat. Soc. B 32, 283-301;
 * Fischer 1974), with answers missing by design: P(right) = 1 / (1 + exp(-(ability + easiness))). Newton's method with
 * step halving on exact gradients; the information is kept once steps are short. Standard errors come from the inverse
 * information under "easiness sums to 0". The items must be comparable with one another (`listComparableItems`);
 * RangeError otherwise.
 */
export function fitRaschItems(grouping: RaschGrouping): RaschItemFit {
  const size = grouping.right.length;
  const abilities = new Float64Array(grouping.groups.length);
  const information = new Float64Array(size * size);
  const evaluateAt = (easiness: Float64Array, renew: boolean) =>
    evaluate(grouping, easiness, abilities, renew ? information : null);

  let easiness = listLogOdds(grouping);
  let current = evaluateAt(easiness, true);
  liftCommonShift(information, size);
  let factor = requireFactor(information, size);
  let iterations = 0;
  for (let longest = 1; longest > SMALLEST_STEP && iterations < MOST_ITERATIONS; iterations += 1) {
    const step = cutStep(solveWithFactor(factor, current.gradient));
    longest = findLongest(step);
    const renew = longest > SHORT_STEP;
    const taken = takeStep(easiness, step, current.logLikelihood, (at) => evaluateAt(at, renew));
    easiness = taken.easiness;
    current = taken.reached;
    if (!renew) continue;
    liftCommonShift(information, size);
    factor = requireFactor(information, size);
  }

  const last = evaluateAt(easiness, true);
  const constant = liftCommonShift(information, size);
  const inverse = listInverseDiagonal(requireFactor(information, size), size);
  const mean = easiness.reduce((sum, value) => sum + value, 0) / size;
  return {
    easiness: easiness.map((value) => value - mean),
    standardErrors: inverse.map((value) => Math.sqrt(Math.max(0, value - 1 / (constant * size * size)))),
    logLikelihood: last.logLikelihood,
    iterations,
    isExact: last.isExact,
  };
}
