import { isDefined, type Quantity, type Statistic, toUndefined } from "@/lib/agreement/statistic";
import { computeWilsonInterval } from "@/lib/agreement/wilson-interval";

/** Classical statistics of one item of a test. */
export interface ItemStatistics {
  /** Share of the persons who got it right ("difficulty", high for an easy item), with Wilson's interval. */
  readonly rightShare: Statistic;
  /** Correlation of the item with the whole score. */
  readonly pointBiserial: Quantity;
  /** Correlation of the item with the score of all other items. */
  readonly restPointBiserial: Quantity;
  /** Cronbach's alpha of the test without this item. */
  readonly alphaWithout: Quantity;
}

export interface TestStatistics {
  readonly persons: number;
  /** `scoreCounts[s]`: how many persons have s items right. */
  readonly scoreCounts: readonly number[];
  readonly mean: Quantity;
  /** Standard deviation of the score, with n - 1. */
  readonly standardDeviation: Quantity;
  readonly alpha: Quantity;
  readonly items: readonly ItemStatistics[];
}

const computeMean = (values: readonly number[]) =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Sum of products of deviations from the means. */
function computeCoSquares(x: readonly number[], y: readonly number[]): number {
  const [meanX, meanY] = [computeMean(x), computeMean(y)];
  return x.reduce((sum, value, i) => sum + (value - meanX) * ((y[i] ?? 0) - meanY), 0);
}

/**
 * The point-biserial correlation of a 0/1 variable with any other: Pearson's r (Lord and Novick 1968, section 15.5, from
 * memory). Undefined where either does not vary. RangeError when the lists differ in length.
 */
export function computePointBiserial(item: readonly number[], score: readonly number[]): Quantity {
  if (item.length !== score.length) throw new RangeError("computePointBiserial: lists of unequal length");
  const [ofItem, ofScore] = [computeCoSquares(item, item), computeCoSquares(score, score)];
  if (!(ofItem > 1e-12 && ofScore > 1e-12)) return toUndefined("one of the two does not vary");
  return { value: computeCoSquares(item, score) / Math.sqrt(ofItem * ofScore) };
}

/**
 * Cronbach's alpha (Cronbach 1951, Psychometrika 16, 297-334), which for 0/1 items is KR-20 (Kuder and Richardson 1937,
 * formula 20). `columns[item][person]`. Undefined for fewer than two items and where the score does not vary.
 */
export function computeCronbachAlpha(columns: readonly (readonly number[])[]): Quantity {
  const k = columns.length;
  if (k < 2) return toUndefined("needs two items or more");
  const persons = columns[0]?.length ?? 0;
  const scores = Array.from({ length: persons }, (_, i) =>
    columns.reduce((sum, column) => sum + (column[i] ?? 0), 0),
  );
  const ofScore = computeCoSquares(scores, scores);
  if (!(ofScore > 1e-12)) return toUndefined("the scores do not vary");
  const ofItems = columns.reduce((sum, column) => sum + computeCoSquares(column, column), 0);
  return { value: (k / (k - 1)) * (1 - ofItems / ofScore) };
}

function computeItem(
  columns: readonly (readonly number[])[],
  scores: readonly number[],
  i: number,
): ItemStatistics {
  const column = columns[i] ?? [];
  const right = column.reduce((sum, answer) => sum + answer, 0);
  return {
    rightShare: computeWilsonInterval(right, column.length, "nobody answered"),
    pointBiserial: computePointBiserial(column, scores),
    restPointBiserial: computePointBiserial(
      column,
      scores.map((score, person) => score - (column[person] ?? 0)),
    ),
    alphaWithout: computeCronbachAlpha(columns.filter((_, other) => other !== i)),
  };
}

/**
 * Classical item statistics of a complete table `answers[person][item]`, 1 right and 0 wrong (Lord and Novick 1968, ch.
 * 15; values as in check values 7.1). Variances with n - 1. No person: counts of 0, everything else undefined.
 * RangeError when rows differ in length or hold anything but 0 and 1.
 */
export function computeItemStatistics(answers: readonly (readonly number[])[]): TestStatistics {
  const size = answers[0]?.length ?? 0;
  if (answers.some((row) => row.length !== size || row.some((answer) => answer !== 0 && answer !== 1))) {
    throw new RangeError("computeItemStatistics: a complete table of 0 and 1 is needed");
  }
  const columns = Array.from({ length: size }, (_, i) => answers.map((row) => row[i] ?? 0));
  const scores = answers.map((row) => row.reduce((sum, answer) => sum + answer, 0));
  const scoreCounts = new Array<number>(size + 1).fill(0);
  for (const score of scores) scoreCounts[score] = (scoreCounts[score] ?? 0) + 1;
  const persons = answers.length;
  const alpha = computeCronbachAlpha(columns);
  return {
    persons,
    scoreCounts,
    mean: persons === 0 ? toUndefined("nobody answered") : { value: computeMean(scores) },
    standardDeviation:
      persons < 2
        ? toUndefined("needs two persons or more")
        : { value: Math.sqrt(computeCoSquares(scores, scores) / (persons - 1)) },
    alpha: isDefined(alpha) || persons > 0 ? alpha : toUndefined("nobody answered"),
    items: columns.map((_, i) => computeItem(columns, scores, i)),
  };
}
