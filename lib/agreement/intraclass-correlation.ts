import { computeFQuantile } from "@/lib/agreement/f-quantile";
import { isDefined, type Statistic, toUndefined } from "@/lib/agreement/statistic";

/** Mean squares of a complete table of targets by judges. */
export interface MeanSquares {
  readonly targets: number;
  readonly judges: number;
  /** Between targets, BMS. */
  readonly between: number;
  /** Within targets, WMS. */
  readonly within: number;
  /** Between judges, JMS. */
  readonly judge: number;
  /** Residual, EMS. */
  readonly residual: number;
}

/** The six forms of Shrout and Fleiss: model, comma, one rating or the mean of all k. */
export type IccForm = "1,1" | "2,1" | "3,1" | "1,k" | "2,k" | "3,k";

/**
 * Two-way analysis of variance of `scores[target][judge]`, one score in each cell (Shrout and Fleiss 1979, Psychol.
 * Bull. 86, 420-428, table 1 and 3). RangeError when fewer than two targets or judges, or when rows differ in length.
 */
export function computeMeanSquares(scores: readonly (readonly number[])[]): MeanSquares {
  const targets = scores.length;
  const judges = scores[0]?.length ?? 0;
  if (targets < 2 || judges < 2 || scores.some((row) => row.length !== judges)) {
    throw new RangeError(
      "computeMeanSquares: a complete table of two targets by two judges or more is needed",
    );
  }
  const grand = scores.flat().reduce((sum, score) => sum + score, 0) / (targets * judges);
  const targetMeans = scores.map((row) => row.reduce((sum, score) => sum + score, 0) / judges);
  const judgeMeans = Array.from(
    { length: judges },
    (_, j) => scores.reduce((sum, row) => sum + (row[j] ?? 0), 0) / targets,
  );
  const squares = (means: readonly number[]) => means.reduce((sum, mean) => sum + (mean - grand) ** 2, 0);
  let within = 0;
  let residual = 0;
  for (const [i, row] of scores.entries()) {
    const targetMean = targetMeans[i] ?? 0;
    for (const [j, score] of row.entries()) {
      within += (score - targetMean) ** 2;
      residual += (score - targetMean - (judgeMeans[j] ?? 0) + grand) ** 2;
    }
  }
  return {
    targets,
    judges,
    between: (judges * squares(targetMeans)) / (targets - 1),
    within: within / (targets * (judges - 1)),
    judge: (targets * squares(judgeMeans)) / (judges - 1),
    residual: residual / ((targets - 1) * (judges - 1)),
  };
}

/** Below this, a mean square is rounding error. */
const NOTHING = 1e-12;

/**
 * (between - error) / (between + (k - 1) error) with the F interval of Shrout and Fleiss 1979, p. 424 to 425; `k` may be
 * a mean number of ratings. Serves ICC(1,1) with WMS and ICC(3,1) with EMS. No spread at all: undefined.
 */
export function computeRatioIcc(
  between: number,
  error: number,
  k: number,
  betweenDegrees: number,
  errorDegrees: number,
): Statistic {
  const below = between + (k - 1) * error;
  if (below < NOTHING) return toUndefined("all ratings are equal, so there is nothing to tell apart");
  const toValue = (f: number) => (f === Number.POSITIVE_INFINITY ? 1 : (f - 1) / (f + k - 1));
  const f = error < NOTHING ? Number.POSITIVE_INFINITY : between / error;
  return {
    value: (between - error) / below,
    low: toValue(f / computeFQuantile(0.975, betweenDegrees, errorDegrees)),
    high: toValue(f * computeFQuantile(0.975, errorDegrees, betweenDegrees)),
  };
}

/**
 * ICC(2,1) and its interval (Shrout and Fleiss 1979, p. 424; as in McGraw and Wong 1996, table 7, case 2A), its low end cut
 * to -1 / (k - 1), where those of the other forms end by themselves.
 */
function computeTwoWayIcc(squares: MeanSquares): Statistic {
  const { targets: n, judges: k, between, judge, residual } = squares;
  const below = between + (k - 1) * residual + (k * (judge - residual)) / n;
  if (below < NOTHING) return toUndefined("all ratings are equal, so there is nothing to tell apart");
  const value = (between - residual) / below;
  const rest = (n * (1 + (k - 1) * value) - k * value) * residual;
  const judged = k * value * judge;
  const degreesBelow = (n - 1) * judged ** 2 + rest ** 2;
  if (degreesBelow < NOTHING) return { value, low: value, high: value };
  const degrees = Math.max(1e-3, ((k - 1) * (n - 1) * (judged + rest) ** 2) / degreesBelow);
  const spread = k * judge + (k * n - k - n) * residual;
  const upper = computeFQuantile(0.975, n - 1, degrees);
  const lower = computeFQuantile(0.975, degrees, n - 1);
  return {
    value,
    low: Math.min(
      value,
      Math.max(-1 / (k - 1), (n * (between - upper * residual)) / (upper * spread + n * between)),
    ),
    high: Math.max(value, (n * (lower * between - residual)) / (spread + n * lower * between)),
  };
}

/** From the reliability of one rating to that of the mean of k (Spearman 1910 and Brown 1910). */
function stepUp(reliability: number, k: number): number {
  return (k * reliability) / (1 + (k - 1) * reliability);
}

function toMeanRating(one: Statistic, k: number): Statistic {
  if (!isDefined(one)) return one;
  if (1 + (k - 1) * one.value < NOTHING)
    return toUndefined("the estimated spread between items is not positive");
  if (1 + (k - 1) * one.low < NOTHING)
    return toUndefined("the interval of the spread between items reaches below 0");
  return { value: stepUp(one.value, k), low: stepUp(one.low, k), high: stepUp(one.high, k) };
}

/**
 * The intraclass correlations of Shrout and Fleiss 1979 (Psychol. Bull. 86, 420-428) from the mean squares: model 1 (each
 * target its own judges), 2 (judges are a sample) and 3 (these judges only), for one rating or the mean of all k. The
 * intervals rest on normal theory: with no disagreement at all they have no width. Undefined where all scores are equal.
 */
export function computeIcc(squares: MeanSquares, form: IccForm): Statistic {
  const { targets: n, judges: k, between, within, residual } = squares;
  const one =
    form[0] === "1"
      ? computeRatioIcc(between, within, k, n - 1, n * (k - 1))
      : form[0] === "2"
        ? computeTwoWayIcc(squares)
        : computeRatioIcc(between, residual, k, n - 1, (n - 1) * (k - 1));
  return form.endsWith("k") ? toMeanRating(one, k) : one;
}

/**
 * ICC(1,1) where targets have different numbers of ratings: one-way analysis of variance with the mean number of ratings
 * n0 = (N - sum(k_i^2) / N) / (n - 1) in the place of k (Donner 1986, Int. Stat. Rev. 54, 67-82, section 2, from
 * memory). The F interval is then approximate. Undefined with fewer than two targets, where no target has two ratings,
 * and where all scores are equal. Equal numbers give ICC(1,1) exactly.
 */
export function computeOneWayIcc(scores: readonly (readonly number[])[]): Statistic {
  const rated = scores.filter((row) => row.length > 0);
  const ratings = rated.reduce((sum, row) => sum + row.length, 0);
  if (rated.length < 2) return toUndefined("fewer than two items were rated");
  if (ratings === rated.length) return toUndefined("no item was rated by two raters");
  const grand = rated.flat().reduce((sum, score) => sum + score, 0) / ratings;
  let between = 0;
  let within = 0;
  let squaredCounts = 0;
  for (const row of rated) {
    const mean = row.reduce((sum, score) => sum + score, 0) / row.length;
    between += row.length * (mean - grand) ** 2;
    within += row.reduce((sum, score) => sum + (score - mean) ** 2, 0);
    squaredCounts += row.length ** 2;
  }
  const degrees = [rated.length - 1, ratings - rated.length] as const;
  const k = (ratings - squaredCounts / ratings) / degrees[0];
  return computeRatioIcc(between / degrees[0], within / degrees[1], k, degrees[0], degrees[1]);
}
