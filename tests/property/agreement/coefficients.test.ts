/** What must hold of the coefficients whatever the table. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createAgreementWeights } from "@/lib/agreement/agreement-weights";
import { computeCohenKappa } from "@/lib/agreement/cohen-kappa";
import { computeAgreement } from "@/lib/agreement/compute-agreement";
import { computeCongerKappa } from "@/lib/agreement/conger-kappa";
import { computeFleissKappa } from "@/lib/agreement/fleiss-kappa";
import { computeKrippendorffAlpha } from "@/lib/agreement/krippendorff-alpha";
import type { Rating } from "@/lib/agreement/rating";
import { isDefined, type Quantity } from "@/lib/agreement/statistic";
import { groupUnitPatterns, toUnitCounts } from "@/lib/agreement/unit-patterns";
import { computeWilsonInterval } from "@/lib/agreement/wilson-interval";

const SCALE = ["g0", "g1", "g2", "g3", "g4"];

/** Any ratings: up to four raters and ten items, with gaps. */
const anyRatings: fc.Arbitrary<Rating[]> = fc
  .uniqueArray(fc.tuple(fc.nat(9), fc.nat(3)), { maxLength: 40, selector: (pair) => pair.join() })
  .chain((pairs) =>
    fc
      .array(fc.nat(4), { minLength: pairs.length, maxLength: pairs.length })
      .map((grades) =>
        pairs.map(([item, rater], i) => ({ item: `i${item}`, rater: `r${rater}`, grade: `g${grades[i]}` })),
      ),
  );

/** Pairs of grades by two raters of the same items. */
const pairs = fc.array(fc.tuple(fc.nat(4), fc.nat(4)), { minLength: 2, maxLength: 40 });

const toCross = (list: readonly (readonly [number, number])[]) => {
  const table = SCALE.map(() => SCALE.map(() => 0));
  for (const [i, j] of list) {
    const row = table[i];
    if (row) row[j] = (row[j] ?? 0) + 1;
  }
  return table;
};

const toPatterns = (list: readonly (readonly [number, number])[]) =>
  groupUnitPatterns(toUnitCounts([list.map(([first]) => first), list.map(([, second]) => second)], 5), 5);

function expectSame(first: Quantity, second: Quantity): void {
  expect(isDefined(first)).toBe(isDefined(second));
  if (isDefined(first) && isDefined(second)) expect(first.value).toBeCloseTo(second.value, 10);
}

/** Every number of a JSON object is finite, and every interval holds its value. */
function expectSound(node: unknown): void {
  if (typeof node === "number") expect(Number.isFinite(node)).toBe(true);
  if (typeof node !== "object" || node === null) return;
  if ("value" in node && "low" in node && "high" in node) {
    expect(Object.keys(node)).toEqual(["value", "low", "high"]);
    expect(node.low).toBeLessThanOrEqual((node.value as number) + 1e-12);
    expect(node.high).toBeGreaterThanOrEqual((node.value as number) - 1e-12);
  }
  if ("undefined" in node) expect(node.undefined).toMatch(/\w/);
  for (const inner of Object.values(node)) expectSound(inner);
}

describe("the agreement object", () => {
  it("is sound, whatever the ratings: no NaN, no interval that misses its value", () => {
    fc.assert(
      fc.property(anyRatings, (ratings) => {
        expectSound(computeAgreement(ratings, SCALE));
      }),
    );
  });

  it("gives the same bytes for the same input", () => {
    fc.assert(
      fc.property(anyRatings, (ratings) => {
        expect(JSON.stringify(computeAgreement(ratings, SCALE))).toBe(
          JSON.stringify(computeAgreement(ratings, SCALE)),
        );
      }),
      { numRuns: 20 },
    );
  });

  it("does not depend on the names of items and raters", () => {
    fc.assert(
      fc.property(anyRatings, (ratings) => {
        const renamed = ratings.map((one) => ({ ...one, item: `x${one.item}`, rater: `y${one.rater}` }));
        expect(computeAgreement(renamed, SCALE)).toEqual(computeAgreement(ratings, SCALE));
      }),
      { numRuns: 30 },
    );
  });

  it("turns its bias round, and nothing else of two raters, when they change places", () => {
    fc.assert(
      fc.property(pairs, (list) => {
        const toRatings = (first: 0 | 1) =>
          list.flatMap((pair, item) => [
            { item: `${item}`, rater: "a", grade: `g${pair[first]}` },
            { item: `${item}`, rater: "b", grade: `g${pair[1 - first]}` },
          ]);
        const [one, other] = [computeAgreement(toRatings(0), SCALE), computeAgreement(toRatings(1), SCALE)];
        if (!isDefined(one.bias) || !isDefined(other.bias)) throw new Error("must be defined");
        expect(one.bias.value).toBeCloseTo(-other.bias.value, 12);
        expect(one.bias.low).toBeCloseTo(-other.bias.high, 12);
        expect([one.exact, one.withinOne]).toEqual([other.exact, other.withinOne]);
        for (const kind of ["unweighted", "linear", "quadratic"] as const) {
          expectSame(one.kappa[kind], other.kappa[kind]);
        }
        expectSame(one.fleiss, other.fleiss);
        expectSame(one.ac1, other.ac1);
      }),
    );
  });
});

describe("how the coefficients hang together", () => {
  it("Conger's kappa of two raters is Cohen's (Conger 1980)", () => {
    fc.assert(
      fc.property(pairs, fc.constantFrom("identity", "linear", "quadratic"), (list, kind) => {
        const weights = createAgreementWeights(kind as "identity", 5);
        const rows = [list.map(([first]) => first), list.map(([, second]) => second)];
        expectSame(computeCongerKappa(rows, 5, weights), computeCohenKappa(toCross(list), weights));
      }),
    );
  });

  it("alpha of complete ratings is Fleiss' kappa corrected for small samples: 1 - (1 - kappa)(n - 1) / n", () => {
    fc.assert(
      fc.property(pairs, (list) => {
        const kappa = computeFleissKappa(toPatterns(list));
        const alpha = computeKrippendorffAlpha(toPatterns(list), "nominal", { resamples: 2 });
        expect(isDefined(alpha)).toBe(isDefined(kappa));
        if (!isDefined(kappa) || !isDefined(alpha)) return;
        const values = 2 * list.length;
        expect(alpha.value).toBeCloseTo(1 - ((1 - kappa.value) * (values - 1)) / values, 10);
      }),
    );
  });

  it("interval alpha does not change when the values are shifted or stretched", () => {
    fc.assert(
      fc.property(
        pairs,
        fc.integer({ min: -9, max: 9 }),
        fc.integer({ min: 1, max: 9 }),
        (list, shift, stretch) => {
          const values = SCALE.map((_, place) => shift + stretch * place);
          expectSame(
            computeKrippendorffAlpha(toPatterns(list), "interval", { values, resamples: 2 }),
            computeKrippendorffAlpha(toPatterns(list), "interval", { resamples: 2 }),
          );
        },
      ),
    );
  });

  it("on two grades all weights and all metrics are one", () => {
    const binary = fc.array(fc.tuple(fc.nat(1), fc.nat(1)), { minLength: 2, maxLength: 30 });
    fc.assert(
      fc.property(binary, (list) => {
        const rows = [list.map(([first]) => first), list.map(([, second]) => second)];
        const cross = toCross(list)
          .slice(0, 2)
          .map((row) => row.slice(0, 2));
        const plain = computeCohenKappa(cross);
        expectSame(computeCohenKappa(cross, createAgreementWeights("quadratic", 2)), plain);
        const patterns = groupUnitPatterns(toUnitCounts(rows, 2), 2);
        const [nominal, ordinal] = (["nominal", "ordinal"] as const).map((metric) =>
          computeKrippendorffAlpha(patterns, metric, { resamples: 2 }),
        );
        if (nominal && ordinal) expectSame(nominal, ordinal);
      }),
    );
  });

  it("kappa is 1 exactly when all agree on more than one grade", () => {
    fc.assert(
      fc.property(pairs, (list) => {
        const kappa = computeCohenKappa(toCross(list));
        const allAgree = list.every(([first, second]) => first === second);
        if (!isDefined(kappa))
          expect(allAgree && new Set(list.map(([first]) => first)).size === 1).toBe(true);
        else expect(kappa.value === 1).toBe(allAgree);
      }),
    );
  });
});

describe("Wilson's interval", () => {
  it("lies in [0, 1], holds the share, mirrors, and narrows with more trials", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5000 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (trials, share) => {
          const hits = Math.round(share * trials);
          const [one, mirror, more] = [
            computeWilsonInterval(hits, trials),
            computeWilsonInterval(trials - hits, trials),
            computeWilsonInterval(hits * 4, trials * 4),
          ];
          if (!isDefined(one) || !isDefined(mirror) || !isDefined(more)) throw new Error("must be defined");
          expect(one.low).toBeGreaterThanOrEqual(0);
          expect(one.high).toBeLessThanOrEqual(1);
          expect(one.low).toBeLessThanOrEqual(one.value);
          expect(one.high).toBeGreaterThanOrEqual(one.value);
          expect(mirror.low).toBeCloseTo(1 - one.high, 12);
          expect(more.high - more.low).toBeLessThan(one.high - one.low);
        },
      ),
    );
  });
});
