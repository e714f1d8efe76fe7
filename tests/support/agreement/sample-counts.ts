import fc from "fast-check";
import type { Counts, GradeCounts } from "@/lib/agreement/counts";
import { tallyNames } from "@/lib/agreement/tally";
import { CAUSES } from "@/lib/plot/mark";

const small = fc.nat(50);
const fiveCounts = fc.array(small, { minLength: 5, maxLength: 5 });

/** Names, the awkward ones that objects already have among them. */
const name = fc.constantFrom("crystal", "feather", "pinpoint", "__proto__", "constructor", "toString");
const tally = fc.array(name, { maxLength: 8 }).map(tallyNames);

function toRecord<T>(entries: readonly (readonly [string, T])[]): Record<string, T> {
  return Object.fromEntries([...new Map(entries)].sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** The scale that `gradeCounts` draws from. */
export const SAMPLE_SCALE = ["VS1", "VS2", "SI1", "SI2"] as const;

/** Grade counts that fit together, from pairs of places in SAMPLE_SCALE. */
export function toGradeCounts(pairs: readonly (readonly [number, number])[]): GradeCounts {
  const references = SAMPLE_SCALE.flatMap((grade, place) => {
    const plotted = pairs
      .filter(([reference]) => reference === place)
      .map((pair) => SAMPLE_SCALE[pair[1]] ?? "");
    return plotted.length > 0 ? [[grade, tallyNames(plotted)] as const] : [];
  });
  const steps = pairs.map(([reference, plotted]) => plotted - reference);
  return {
    graded: pairs.length,
    exact: steps.filter((step) => step === 0).length,
    withinOne: steps.filter((step) => Math.abs(step) <= 1).length,
    steps: steps.reduce((sum, step) => sum + step, 0),
    stepsSquared: steps.reduce((sum, step) => sum + step * step, 0),
    confusion: toRecord(references),
  };
}

const place = fc.nat(SAMPLE_SCALE.length - 1);
const gradeCounts = fc.array(fc.tuple(place, place), { minLength: 1, maxLength: 12 }).map(toGradeCounts);

/** Counts as they may come of any number of plots. */
export const anyCounts: fc.Arbitrary<Counts> = fc.record({
  plots: fc.integer({ min: 1, max: 50 }),
  hundredths: fc.nat(500_000),
  hundredthsSquared: fc.nat(1_000_000_000),
  found: small,
  overlooked: small,
  strays: fc.array(fc.constantFrom(...CAUSES), { maxLength: 10 }).map(tallyNames),
  straysSquared: fc.nat(1000),
  characteristics: fc
    .array(
      fc.tuple(
        name,
        fc
          .record({ overlooked: small, takenFor: tally, strays: small })
          .map(({ overlooked, takenFor, strays }) => {
            const found = Object.values(takenFor).reduce((sum, count) => sum + count, 0);
            return { reference: found + overlooked, found, takenFor, strays };
          }),
      ),
      { maxLength: 4 },
    )
    .map(toRecord),
  grades: fc
    .array(fc.tuple(fc.constantFrom("clarity", "colour"), gradeCounts), { maxLength: 2 })
    .map(toRecord),
  freeResponse: fc.record({ found: fiveCounts, strays: fiveCounts }),
});
