import { type AgreementWeights, createAgreementWeights } from "@/lib/agreement/agreement-weights";
import { toChanceCorrected } from "@/lib/agreement/chance-corrected";
import { computeLinearisedError } from "@/lib/agreement/linearised-error";
import { computeObservedAgreement } from "@/lib/agreement/observed-agreement";
import { type Estimate, toUndefined } from "@/lib/agreement/statistic";
import type { UnitPatterns } from "@/lib/agreement/unit-patterns";

/**
 * The coefficient of Brennan and Prediger 1981 (Educ. Psychol. Meas. 41, 687-699), for any number of raters, weights and
 * missing ratings: chance agreement is the mean of all weights, 1/q when unweighted. t interval on the linearised error.
 * Undefined for a scale of fewer than two grades and where no unit has two ratings.
 */
export function computeBrennanPrediger(
  table: UnitPatterns,
  weights: AgreementWeights = createAgreementWeights("identity", table.categories),
): Estimate {
  if (table.categories < 2) return toUndefined("the scale has fewer than two grades");
  const observed = computeObservedAgreement(table, weights);
  if (observed.pairedUnits === 0) return toUndefined("no item was rated by two raters");
  const expected = weights.flat().reduce((sum, weight) => sum + weight, 0) / table.categories ** 2;
  const byPattern = table.patterns.map(() => expected);
  return toChanceCorrected({
    observed: observed.agreement,
    expected,
    expectedExact: 1 / table.categories,
    standardError: computeLinearisedError(table, observed, expected, byPattern),
    units: observed.pairedUnits,
    degrees: Math.max(1, observed.units - 1),
  });
}
