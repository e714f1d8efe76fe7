import type { ObservedAgreement } from "@/lib/agreement/observed-agreement";
import type { UnitPatterns } from "@/lib/agreement/unit-patterns";

/**
 * Standard error, over a sample of units, of a coefficient (agreement - expected) / (1 - expected) whose chance term is
 * quadratic in the category shares (Gwet 2008, Br. J. Math. Stat. Psychol. 61, 29-48, linearised variance; the form for
 * missing ratings and weights from memory, tested against the printed error .14295 of check values 4.4).
 * `expectedByPattern` is each pattern's own chance term, whose mean over the units is `expected`. Raters are held fixed.
 * Fewer than two units: NaN.
 */
export function computeLinearisedError(
  table: UnitPatterns,
  observed: ObservedAgreement,
  expected: number,
  expectedByPattern: readonly number[],
): number {
  const { units, pairedUnits, agreement, byPattern } = observed;
  const value = (agreement - expected) / (1 - expected);
  const sum = table.patterns.reduce((total, pattern, p) => {
    const paired = pattern.ratings > 1 ? (byPattern[p] ?? 0) - expected : 0;
    const own = ((units / pairedUnits) * paired) / (1 - expected);
    const shift = (2 * (1 - value) * ((expectedByPattern[p] ?? 0) - expected)) / (1 - expected);
    return total + pattern.units * (own - shift - value) ** 2;
  }, 0);
  return Math.sqrt(sum / (units * (units - 1)));
}
