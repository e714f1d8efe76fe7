import { type AgreementWeights, createAgreementWeights } from "@/lib/agreement/agreement-weights";
import { toChanceCorrected } from "@/lib/agreement/chance-corrected";
import { computeLinearisedError } from "@/lib/agreement/linearised-error";
import { computeObservedAgreement, weighCounts } from "@/lib/agreement/observed-agreement";
import { type Estimate, isDefined, type Quantity, toUndefined } from "@/lib/agreement/statistic";
import type { UnitPatterns } from "@/lib/agreement/unit-patterns";

/**
 * Fleiss' kappa for any number of raters (Fleiss 1971, Psychol. Bull. 76, 378-382); with two raters it is Scott's pi
 * (Scott 1955). Weights and missing ratings as in Gwet 2014, ch. 3 to 5 (category shares are means over units of the
 * units' own shares). t interval, one degree of freedom fewer than units, on the linearised error of Gwet 2008; Fleiss'
 * own error holds only under pure chance and gives `computeFleissZ`. Undefined where no unit has two ratings and where
 * only one category was used.
 */
export function computeFleissKappa(
  table: UnitPatterns,
  weights: AgreementWeights = createAgreementWeights("identity", table.categories),
): Estimate {
  const observed = computeObservedAgreement(table, weights);
  if (observed.pairedUnits === 0) return toUndefined("no item was rated by two raters");
  const { shares } = observed;
  const forward = weighCounts(shares, weights);
  const transposed = weights.map((_, k) => weights.map((row) => row[k] ?? 0));
  const backward = weighCounts(shares, transposed);
  const expected = shares.reduce((sum, share, k) => sum + share * (forward[k] ?? 0), 0);
  const byPattern = table.patterns.map(({ counts, ratings }) =>
    counts.reduce((sum, count, k) => {
      const mean = ((forward[k] ?? 0) + (backward[k] ?? 0)) / 2;
      return sum + (count / ratings) * mean;
    }, 0),
  );
  return toChanceCorrected({
    observed: observed.agreement,
    expected,
    expectedExact: shares.reduce((sum, share) => sum + share * share, 0),
    standardError: computeLinearisedError(table, observed, expected, byPattern),
    units: observed.pairedUnits,
    degrees: Math.max(1, observed.units - 1),
  });
}

/** Ratings per unit where all units have the same number, at least two; else null. */
function findEqualRatings(table: UnitPatterns): number | null {
  const ratings = table.patterns[0]?.ratings ?? 0;
  return ratings > 1 && table.patterns.every((pattern) => pattern.ratings === ratings) ? ratings : null;
}

/**
 * Fleiss' kappa of each category against all others taken together (Fleiss 1971, p. 381), in scale order. Needs the same
 * number of ratings, two or more, for every unit; a category that nobody or everybody used is undefined.
 */
export function listFleissCategoryKappas(table: UnitPatterns): readonly Quantity[] {
  const ratings = findEqualRatings(table);
  const units = table.patterns.reduce((sum, pattern) => sum + pattern.units, 0);
  return Array.from({ length: table.categories }, (_, k) => {
    if (ratings === null) return toUndefined("the items do not all have the same number of ratings");
    const share =
      table.patterns.reduce((sum, p) => sum + (p.counts[k] ?? 0) * p.units, 0) / (units * ratings);
    const spread = share * (1 - share);
    if (spread < 1e-15) return toUndefined("nobody, or everybody, gave this grade");
    const apart = table.patterns.reduce((sum, p) => {
      const count = p.counts[k] ?? 0;
      return sum + count * (ratings - count) * p.units;
    }, 0);
    return { value: 1 - apart / (units * ratings * (ratings - 1) * spread) };
  });
}

/**
 * Fleiss' kappa over its standard error under pure chance (Fleiss, Nee and Landis 1979, Psychol. Bull. 86, 974-977,
 * from memory). Undefined where kappa is, and unless every unit has the same number of ratings.
 */
export function computeFleissZ(table: UnitPatterns): Quantity {
  const kappa = computeFleissKappa(table);
  if (!isDefined(kappa)) return kappa;
  const ratings = findEqualRatings(table);
  if (ratings === null) return toUndefined("the items do not all have the same number of ratings");
  const { units, shares } = computeObservedAgreement(
    table,
    createAgreementWeights("identity", table.categories),
  );
  const spread = shares.reduce((sum, share) => sum + share * (1 - share), 0);
  const skew = shares.reduce((sum, share) => sum + share * (1 - share) * (1 - 2 * share), 0);
  const variance = (2 * (spread ** 2 - skew)) / (spread ** 2 * units * ratings * (ratings - 1));
  if (variance < 1e-15) return toUndefined("under chance the coefficient could not vary");
  return { value: kappa.value / Math.sqrt(variance) };
}
