/** Free-response data: what was found and what was stray on each stone, by the confidence of the marks. */

/** One reading of one stone. A reading of a stone without reference marks is a clean one. */
export interface FreeResponseCase {
  /** Confidence of each stray; any finite scale, higher is surer. */
  readonly strays: readonly number[];
  /** Reference marks: the confidence with which each was found, null where it was overlooked. */
  readonly marks: readonly { readonly confidence: number | null; readonly weight?: number }[];
}

/** One operating point: what holds when only marks at or above the threshold count. */
export interface FreeResponsePoint {
  readonly threshold: number;
  /** Strays per reading, over all readings (NLF of check values 5.1). */
  readonly straysPerPlot: number;
  /** Share of the reference marks that were found (LLF). */
  readonly foundShare: number;
  /** The same with the weights of each stone's marks made to sum to 1, a mean over stones with marks (wLLF). */
  readonly foundWeight: number;
}

/** The weights of a case's marks, made to sum to 1; equal where none is given. No mark: empty. */
export function listMarkWeights(one: FreeResponseCase): number[] {
  const weights = one.marks.map(({ weight }) => weight ?? 1);
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return weights.map((weight) => (sum === 0 ? 1 / weights.length : weight / sum));
}

/**
 * The free-response curve: an operating point for each confidence given, surest first (Chakraborty's open FROC book,
 * vocabulary as in check values 5.1; the denominator of strays is all readings). A second mark on a reference mark must
 * be left out by the caller: keep the surest. The curve has no upper end to the right, so its area is no score; see
 * `computeAfroc`. No case, or no mark at all: no point. Shares of no reference marks are 0.
 */
export function listFreeResponsePoints(cases: readonly FreeResponseCase[]): FreeResponsePoint[] {
  const strays = cases.flatMap((one) => one.strays);
  const found = cases.flatMap((one) => {
    const weights = listMarkWeights(one);
    return one.marks.map(({ confidence }, i) => ({ confidence, weight: weights[i] ?? 0 }));
  });
  const withMarks = cases.filter((one) => one.marks.length > 0).length;
  const given = found.flatMap(({ confidence }) => (confidence === null ? [] : [confidence]));
  const thresholds = [...new Set([...strays, ...given])].sort((a, b) => b - a);
  return thresholds.map((threshold) => {
    const hits = found.filter(({ confidence }) => confidence !== null && confidence >= threshold);
    const weight = hits.reduce((sum, hit) => sum + hit.weight, 0);
    return {
      threshold,
      straysPerPlot: strays.filter((confidence) => confidence >= threshold).length / cases.length,
      foundShare: found.length === 0 ? 0 : hits.length / found.length,
      foundWeight: withMarks === 0 ? 0 : weight / withMarks,
    };
  });
}
