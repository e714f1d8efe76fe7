import { createAgreementWeights, type WeightKind } from "@/lib/agreement/agreement-weights";
import { computeCohenKappa } from "@/lib/agreement/cohen-kappa";
import { computeFleissKappa } from "@/lib/agreement/fleiss-kappa";
import { computeGwetAc } from "@/lib/agreement/gwet-ac";
import { computeIcc, computeMeanSquares, computeOneWayIcc } from "@/lib/agreement/intraclass-correlation";
import { computeKrippendorffAlphas } from "@/lib/agreement/krippendorff-alpha";
import type { Rating } from "@/lib/agreement/rating";
import {
  buildRatingTable,
  listRaterPairs,
  type RatingTable,
  toUnitPatterns,
} from "@/lib/agreement/rating-table";
import { computeSignedBias } from "@/lib/agreement/signed-bias";
import { type Statistic, toStatistic, toUndefined } from "@/lib/agreement/statistic";
import { computeWilsonInterval } from "@/lib/agreement/wilson-interval";

/** What the `agreement` command prints (design.md, command line). */
export interface Agreement {
  readonly items: number;
  readonly raters: number;
  readonly ratings: number;
  readonly exact: Statistic;
  readonly withinOne: Statistic;
  readonly bias: Statistic;
  readonly kappa: Readonly<Record<"unweighted" | "linear" | "quadratic", Statistic>>;
  readonly fleiss: Statistic;
  readonly alpha: Readonly<Record<"nominal" | "ordinal" | "interval", Statistic>>;
  readonly ac1: Statistic;
  readonly icc: Readonly<Record<"1,1" | "2,1" | "3,1", Statistic>>;
}

type PairAgreement = Pick<Agreement, "exact" | "withinOne" | "bias" | "kappa">;

/** The statistics that need exactly two raters, from pairs (first rater, second rater) of places in the scale. */
function compareTwoRaters(pairs: readonly (readonly [number, number])[], size: number): PairAgreement {
  const cross = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  let exact = 0;
  let withinOne = 0;
  for (const [first, second] of pairs) {
    const row = cross[first];
    if (row) row[second] = (row[second] ?? 0) + 1;
    if (first === second) exact += 1;
    if (Math.abs(first - second) <= 1) withinOne += 1;
  }
  const reason = "no item was rated by both raters";
  const kappa = (kind: WeightKind) =>
    pairs.length === 0
      ? toUndefined(reason)
      : toStatistic(computeCohenKappa(cross, createAgreementWeights(kind, size)));
  return {
    exact: computeWilsonInterval(exact, pairs.length, reason),
    withinOne: computeWilsonInterval(withinOne, pairs.length, reason),
    bias: pairs.length === 0 ? toUndefined(reason) : computeSignedBias(pairs, size),
    kappa: { unweighted: kappa("identity"), linear: kappa("linear"), quadratic: kappa("quadratic") },
  };
}

function refuseTwoRaters(raters: number): PairAgreement {
  const no = toUndefined(`needs exactly two raters; there ${raters === 1 ? "is" : "are"} ${raters}`);
  return { exact: no, withinOne: no, bias: no, kappa: { unweighted: no, linear: no, quadratic: no } };
}

/** The intraclass correlations of places in the scale; the two-way forms only where nobody left an item out. */
function computeIccs(table: RatingTable): Agreement["icc"] {
  const { items, raters, grades } = table;
  const oneWay = computeOneWayIcc(grades.map((row) => row.map(({ grade }) => grade)));
  const missing = items.length * raters.length - grades.reduce((sum, row) => sum + row.length, 0);
  if (missing > 0) {
    const no = toUndefined(`needs every rater's grade for every item; missing: ${missing}`);
    return { "1,1": oneWay, "2,1": no, "3,1": no };
  }
  if (items.length < 2) {
    const no = toUndefined("fewer than two items were rated");
    return { "1,1": oneWay, "2,1": no, "3,1": no };
  }
  const scores = grades.map((row) => {
    const ordered = new Array<number>(raters.length).fill(0);
    for (const { rater, grade } of row) ordered[rater] = grade;
    return ordered;
  });
  const squares = computeMeanSquares(scores);
  return {
    "1,1": computeIcc(squares, "1,1"),
    "2,1": computeIcc(squares, "2,1"),
    "3,1": computeIcc(squares, "3,1"),
  };
}

type GroupAgreement = Pick<Agreement, "fleiss" | "alpha" | "ac1" | "icc">;

/** The statistics for any number of raters from two on. */
function compareAllRaters(table: RatingTable, seed: number | string): GroupAgreement {
  const raters = table.raters.length;
  if (raters < 2) {
    const no = toUndefined(`needs two raters or more; there ${raters === 1 ? "is 1" : "are 0"}`);
    return {
      fleiss: no,
      alpha: { nominal: no, ordinal: no, interval: no },
      ac1: no,
      icc: { "1,1": no, "2,1": no, "3,1": no },
    };
  }
  const patterns = toUnitPatterns(table);
  return {
    fleiss: toStatistic(computeFleissKappa(patterns)),
    alpha: computeKrippendorffAlphas(patterns, ["nominal", "ordinal", "interval"], { seed }),
    ac1: toStatistic(computeGwetAc(patterns)),
    icc: computeIccs(table),
  };
}

/**
 * Agreement of raters over items, as the `agreement` command prints it. `scale` is the full ordered list of grades, also
 * of those that nobody gave: AC1 and weighted kappa depend on it (check values 11.7). Steps, interval alpha and ICC go by
 * places in the scale. exact, withinOne, bias and kappa need exactly two raters and use the items that both rated; bias
 * is the second rater less the first, in order of first appearance. Sources and intervals: see each function. `seed`
 * fixes the bootstrap of alpha; the same input gives the same output.
 *
 * No rating: counts of 0 and every statistic undefined. Throws AppError `bad-input` for a grade that is not on the scale
 * or a second grade by one rater for one item.
 */
export function computeAgreement(
  ratings: readonly Rating[],
  scale: readonly string[],
  seed: number | string = "agreement",
): Agreement {
  const table = buildRatingTable(ratings, scale);
  const pairwise =
    table.raters.length === 2
      ? compareTwoRaters(listRaterPairs(table), scale.length)
      : refuseTwoRaters(table.raters.length);
  const { fleiss, alpha, ac1, icc } = compareAllRaters(table, seed);
  return {
    items: table.items.length,
    raters: table.raters.length,
    ratings: ratings.length,
    ...pairwise,
    fleiss,
    alpha,
    ac1,
    icc,
  };
}
