import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fitRasch, type RaschFit } from "@/lib/agreement/fit-rasch";
import type { RaschResponse } from "@/lib/agreement/rasch-responses";
import {
  computeScoreDistribution,
  computeScoreWithout,
  listRightProbabilities,
  removeItem,
} from "@/lib/agreement/score-distribution";

/** Up to twelve persons and six items, answers missing anywhere. */
const responses: fc.Arbitrary<RaschResponse[]> = fc
  .array(fc.array(fc.option(fc.boolean(), { freq: 5 }), { minLength: 6, maxLength: 6 }), { maxLength: 12 })
  .map((rows) =>
    rows.flatMap((row, p) =>
      row.flatMap((right, i) => (right === null ? [] : [{ person: `p${p}`, item: `i${i}`, right }])),
    ),
  );

const toEasiness = (fit: RaschFit) => new Map(fit.items.map(({ item, easiness }) => [item, easiness]));

describe("the Rasch fit", () => {
  it("holds no number that is not finite, and every place is a number or a reason", () => {
    fc.assert(
      fc.property(responses, (list) => {
        const fit = fitRasch(list);
        for (const place of [
          ...fit.items.map((one) => one.easiness),
          ...fit.persons.map((one) => one.ability),
        ]) {
          if ("value" in place) {
            expect([place.value, place.standardError, place.low, place.high].every(Number.isFinite)).toBe(
              true,
            );
            expect(place.standardError).toBeGreaterThan(0);
          } else expect(place.undefined).toMatch(/\w/);
        }
      }),
      { numRuns: 300 },
    );
  });

  it("does not depend on the order of answers", () => {
    fc.assert(
      fc.property(responses, (list) => {
        const [first, second] = [toEasiness(fitRasch(list)), toEasiness(fitRasch([...list].reverse()))];
        for (const [item, place] of first) {
          const other = second.get(item);
          // Of two equally large sets that cannot be compared, the earlier is placed; order decides there.
          if (other && "value" in place && "value" in other) expect(other.value).toBeCloseTo(place.value, 5);
        }
      }),
    );
  });

  it("right for wrong turns the scale round", () => {
    fc.assert(
      fc.property(responses, (list) => {
        const turned = fitRasch(list.map((one) => ({ ...one, right: !one.right })));
        const other = toEasiness(turned);
        for (const [item, place] of toEasiness(fitRasch(list))) {
          const mirrored = other.get(item);
          if (!mirrored) throw new Error("an item was lost");
          expect("value" in mirrored).toBe("value" in place);
          if ("value" in place && "value" in mirrored) expect(mirrored.value).toBeCloseTo(-place.value, 5);
        }
      }),
    );
  });

  it("everyone twice leaves the items where they are and shrinks their errors by the root of two", () => {
    fc.assert(
      fc.property(responses, (list) => {
        const double = [...list, ...list.map((one) => ({ ...one, person: `${one.person}'` }))];
        const twice = toEasiness(fitRasch(double));
        for (const [item, place] of toEasiness(fitRasch(list))) {
          const other = twice.get(item);
          if (!("value" in place) || !other || !("value" in other)) continue;
          expect(other.value).toBeCloseTo(place.value, 5);
          expect(place.standardError / other.standardError).toBeCloseTo(Math.SQRT2, 3);
        }
      }),
    );
  });
});

describe("the distribution of a score", () => {
  const easiness = fc.array(fc.double({ min: -6, max: 6, noNaN: true }), { minLength: 1, maxLength: 60 });

  it("sums to 1, and taking an item out undoes putting it in", () => {
    fc.assert(
      fc.property(easiness, fc.nat(), (values, pick) => {
        const probabilities = listRightProbabilities(values, 0);
        const whole = computeScoreDistribution(probabilities);
        expect(whole.values.reduce((sum, value) => sum + value, 0)).toBeCloseTo(1, 12);
        const i = pick % values.length;
        const direct = computeScoreDistribution(probabilities.filter((_, other) => other !== i)).values;
        const removed = removeItem(whole, probabilities[i] ?? 0).values;
        for (const [score, value] of direct.entries()) {
          expect(removed[score]).toBeCloseTo(value, 12);
          expect(computeScoreWithout(whole, probabilities[i] ?? 0, score)).toBeCloseTo(value, 12);
        }
      }),
    );
  });
});
