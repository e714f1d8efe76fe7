import { type AgreementWeights, createAgreementWeights } from "@/lib/agreement/agreement-weights";
import { toChanceCorrected } from "@/lib/agreement/chance-corrected";
import { computeLinearisedError } from "@/lib/agreement/linearised-error";
import { computeObservedAgreement } from "@/lib/agreement/observed-agreement";
import { type Estimate, toUndefined } from "@/lib/agreement/statistic";
import type { UnitPatterns } from "@/lib/agreement/unit-patterns";

/**
 * Gwet's AC1, or AC2 with weights other than identity, for any number of raters and with ratings missing (Gwet 2008,
 * Br. J. Math. Stat. Psychol. 61, 29-48; AC2: Gwet 2014, ch. 4 to 5, formula of check values 4.4). Chance agreement is
 * `sum(weights) / (q (q - 1)) * sum(share_k (1 - share_k))`, q the length of the full scale. t interval with one degree
 * of freedom fewer than there are units, on the linearised error. Undefined for a scale of fewer than two grades and
 * where no unit has two ratings.
 */
export function computeGwetAc(
  table: UnitPatterns,
  weights: AgreementWeights = createAgreementWeights("identity", table.categories),
): Estimate {
  const q = table.categories;
  if (q < 2) return toUndefined("the scale has fewer than two grades");
  const observed = computeObservedAgreement(table, weights);
  if (observed.pairedUnits === 0) return toUndefined("no item was rated by two raters");
  const factor = weights.flat().reduce((sum, weight) => sum + weight, 0) / (q * (q - 1));
  const spread = observed.shares.reduce((sum, share) => sum + share * (1 - share), 0);
  const expected = factor * spread;
  const byPattern = table.patterns.map(
    ({ counts, ratings }) =>
      factor * counts.reduce((sum, count, k) => sum + (count / ratings) * (1 - (observed.shares[k] ?? 0)), 0),
  );
  return toChanceCorrected({
    observed: observed.agreement,
    expected,
    expectedExact: spread / (q - 1),
    standardError: computeLinearisedError(table, observed, expected, byPattern),
    units: observed.pairedUnits,
    degrees: Math.max(1, observed.units - 1),
  });
}
