import type { AgreementWeights } from "@/lib/agreement/agreement-weights";
import type { UnitPattern, UnitPatterns } from "@/lib/agreement/unit-patterns";

/** Sums over the units of a table of ratings that several coefficients share. */
export interface ObservedAgreement {
  /** Units with one rating or more. */
  readonly units: number;
  /** Units with two ratings or more. */
  readonly pairedUnits: number;
  /** Mean over the paired units of the weighted share of agreeing pairs of raters. */
  readonly agreement: number;
  /** `shares[k]`: mean over all units of the share of the unit's ratings in category k. */
  readonly shares: readonly number[];
  /** For each pattern, its own share of agreeing pairs; 0 where it has one rating. */
  readonly byPattern: readonly number[];
}

/** The weighted counts `sum over l of weights[k][l] * counts[l]`, for each k. */
export function weighCounts(counts: readonly number[], weights: AgreementWeights): number[] {
  return weights.map((row) => row.reduce((sum, weight, l) => sum + weight * (counts[l] ?? 0), 0));
}

function computePatternAgreement(pattern: UnitPattern, weights: AgreementWeights): number {
  if (pattern.ratings < 2) return 0;
  const weighed = weighCounts(pattern.counts, weights);
  const pairs = pattern.counts.reduce((sum, count, k) => sum + count * ((weighed[k] ?? 0) - 1), 0);
  return pairs / (pattern.ratings * (pattern.ratings - 1));
}

/**
 * Observed agreement among any number of raters with ratings missing (Gwet 2008, Br. J. Math. Stat. Psychol. 61, 29-48;
 * weighted form as in Gwet, Handbook of Inter-Rater Reliability, 2014, ch. 5, from memory; values tested against check
 * values 4.4). No unit: agreement and shares are 0.
 */
export function computeObservedAgreement(table: UnitPatterns, weights: AgreementWeights): ObservedAgreement {
  const shares = new Array<number>(table.categories).fill(0);
  let units = 0;
  let pairedUnits = 0;
  let agreement = 0;
  const byPattern = table.patterns.map((pattern) => {
    const own = computePatternAgreement(pattern, weights);
    units += pattern.units;
    if (pattern.ratings > 1) pairedUnits += pattern.units;
    agreement += own * pattern.units;
    for (const [k, count] of pattern.counts.entries()) {
      shares[k] = (shares[k] ?? 0) + (count / pattern.ratings) * pattern.units;
    }
    return own;
  });
  return {
    units,
    pairedUnits,
    agreement: pairedUnits === 0 ? 0 : agreement / pairedUnits,
    shares: shares.map((share) => (units === 0 ? 0 : share / units)),
    byPattern,
  };
}
