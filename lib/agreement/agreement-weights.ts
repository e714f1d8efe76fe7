/** Tables of weights for chance-corrected agreement: 1 on the diagonal, less the farther two grades lie apart. */

/** `weights[i][j]`: the agreement of grade i with grade j, at most 1, and 1 for i = j. Square. */
export type AgreementWeights = readonly (readonly number[])[];

export type WeightKind = "identity" | "linear" | "quadratic" | "ordinal";

function computeWeight(kind: WeightKind, i: number, j: number, categories: number): number {
  const apart = Math.abs(i - j);
  if (apart === 0) return 1;
  if (kind === "identity") return 0;
  if (kind === "linear") return 1 - apart / (categories - 1);
  if (kind === "quadratic") return 1 - (apart / (categories - 1)) ** 2;
  return 1 - ((apart + 1) * apart) / (categories * (categories - 1));
}

/**
 * The weights for a scale of `categories` grades, by place in the full ordered list (unused grades count).
 * Linear: Cicchetti and Allison 1971; quadratic: Fleiss and Cohen 1973; ordinal: Gwet, Handbook of Inter-Rater
 * Reliability, 4th ed. 2014, section 3.5 (1 - C(|i-j|+1, 2) / C(q, 2)); all cited from memory, the values tested
 * against check values 4.1 and 4.4. No category: an empty table.
 */
export function createAgreementWeights(kind: WeightKind, categories: number): AgreementWeights {
  return Array.from({ length: categories }, (_, i) =>
    Array.from({ length: categories }, (_, j) => computeWeight(kind, i, j, categories)),
  );
}

/**
 * Turns disagreement weights (0 on the diagonal, any size, not necessarily symmetric) into agreement weights,
 * 1 - v / max v (Cohen 1968, Psychol. Bull. 70, 213-220). All zero: all ones, on which kappa is undefined.
 * RangeError when a weight is negative or the diagonal is not 0.
 */
export function toAgreementWeights(disagreements: readonly (readonly number[])[]): AgreementWeights {
  const most = Math.max(0, ...disagreements.flat());
  return disagreements.map((row, i) =>
    row.map((weight, j) => {
      if (!(weight >= 0) || (i === j && weight !== 0)) {
        throw new RangeError(`toAgreementWeights: weight ${weight} at (${i}, ${j})`);
      }
      return most === 0 ? 1 : 1 - weight / most;
    }),
  );
}
