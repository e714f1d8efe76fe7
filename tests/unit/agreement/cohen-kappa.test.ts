import { describe, expect, it } from "vitest";
import { createAgreementWeights, toAgreementWeights } from "@/lib/agreement/agreement-weights";
import { computeCohenKappa, computeKappaErrorUnderChance } from "@/lib/agreement/cohen-kappa";
import {
  COHEN_PROPORTIONS,
  EVERITT_COUNTS,
  EVERITT_WEIGHTS,
} from "@/tests/support/agreement/published-tables";

describe("kappa of Cohen 1960 (check values 4.1, printed .492)", () => {
  it("is .4915254 unweighted", () => {
    expect(computeCohenKappa(COHEN_PROPORTIONS)).toMatchObject({ value: expect.closeTo(0.4915254, 7) });
  });

  it("is .4736842 with linear and .4545455 with quadratic weights", () => {
    const linear = computeCohenKappa(COHEN_PROPORTIONS, createAgreementWeights("linear", 3));
    const quadratic = computeCohenKappa(COHEN_PROPORTIONS, createAgreementWeights("quadratic", 3));
    expect(linear).toMatchObject({ value: expect.closeTo(0.4736842, 7) });
    expect(quadratic).toMatchObject({ value: expect.closeTo(0.4545455, 7) });
  });
});

describe("weighted kappa of Cohen 1968 (check values 4.1, printed .348 and .353)", () => {
  it("takes disagreement weights", () => {
    const weights = toAgreementWeights([
      [0, 1, 3],
      [1, 0, 6],
      [3, 6, 0],
    ]);
    expect(computeCohenKappa(COHEN_PROPORTIONS, weights)).toMatchObject({
      value: expect.closeTo(0.3478261, 7),
    });
  });

  it("takes weights that are not symmetric", () => {
    const weights = toAgreementWeights([
      [0, 1, 4],
      [1, 0, 6],
      [2, 2, 0],
    ]);
    expect(computeCohenKappa(COHEN_PROPORTIONS, weights)).toMatchObject({
      value: expect.closeTo(0.3533835, 7),
    });
  });
});

describe("Fleiss, Cohen and Everitt 1969 (check values 4.1)", () => {
  it("kappa 0.4285714 with standard error 0.0537110 and a z interval on it", () => {
    expect(computeCohenKappa(EVERITT_COUNTS)).toEqual({
      value: expect.closeTo(0.4285714, 7),
      standardError: expect.closeTo(0.053711, 7),
      low: expect.closeTo(0.4285714 - 1.959964 * 0.053711, 6),
      high: expect.closeTo(0.4285714 + 1.959964 * 0.053711, 6),
    });
  });

  // Check values 4.1 print 0.0524268 from R psych 2.2.9, whose weighted variance takes rowSums(w * rs) for the means of
  // the weights under the row shares (it should be colSums). R vcd 1.4-11 and statsmodels 0.13.5 give 0.0569939.
  it("weighted kappa 0.5070700 with standard error 0.0569939", () => {
    expect(computeCohenKappa(EVERITT_COUNTS, EVERITT_WEIGHTS)).toMatchObject({
      value: expect.closeTo(0.50707, 7),
      standardError: expect.closeTo(0.0569939, 7),
    });
  });

  it("standard error under chance 0.0555125 (statsmodels)", () => {
    expect(computeKappaErrorUnderChance(EVERITT_COUNTS)).toEqual({ value: expect.closeTo(0.0555125, 7) });
  });

  it("linear 0.4923077 and quadratic 0.5666667 (scikit-learn)", () => {
    const linear = computeCohenKappa(EVERITT_COUNTS, createAgreementWeights("linear", 3));
    const quadratic = computeCohenKappa(EVERITT_COUNTS, createAgreementWeights("quadratic", 3));
    expect(linear).toMatchObject({ value: expect.closeTo(0.4923077, 7) });
    expect(quadratic).toMatchObject({ value: expect.closeTo(0.5666667, 7) });
  });
});

describe("edges", () => {
  it("is undefined, not 1, when both raters use one identical category (check values 4.1, edge cases)", () => {
    const oneGrade = [
      [0, 0],
      [0, 7],
    ];
    expect(computeCohenKappa(oneGrade)).toEqual({ undefined: expect.stringContaining("only one grade") });
    expect(computeKappaErrorUnderChance(oneGrade)).toEqual({ undefined: expect.any(String) });
  });

  it("is 0 when one rater uses one category only and the other two", () => {
    const table = [
      [3, 4],
      [0, 0],
    ];
    expect(computeCohenKappa(table)).toMatchObject({ value: expect.closeTo(0, 12) });
  });

  it("is undefined for an empty table", () => {
    expect(
      computeCohenKappa([
        [0, 0],
        [0, 0],
      ]),
    ).toEqual({ undefined: "no unit was rated by both raters" });
    expect(computeCohenKappa([])).toEqual({ undefined: "no unit was rated by both raters" });
  });

  it("does not claim certainty from ten units that all agree", () => {
    const kappa = computeCohenKappa([
      [5, 0],
      [0, 5],
    ]);
    // Wilson's low end for 10 of 10 is 10 / (10 + 1.96^2) = 0.7224672; chance agreement is one half.
    expect(kappa).toMatchObject({ value: 1, low: expect.closeTo((0.7224672 - 0.5) / 0.5, 6), high: 1 });
  });

  it("takes t for z with fewer than 30 units: 10 units, 8 agreeing", () => {
    const kappa = computeCohenKappa([
      [4, 1],
      [1, 4],
    ]);
    if (!("value" in kappa)) throw new Error(kappa.undefined);
    expect(kappa.value).toBeCloseTo(0.6, 12);
    expect((kappa.value - kappa.low) / kappa.standardError).toBeCloseTo(2.262157, 5); // qt(.975, 9)
  });

  it("does not take rounding for a spread: three units one step apart at most, quadratic weights", () => {
    const table = Array.from({ length: 10 }, () => new Array<number>(10).fill(0));
    for (const [i, j] of [
      [3, 4],
      [5, 5],
      [7, 6],
    ] as const) {
      const row = table[i];
      if (row) row[j] = 1;
    }
    const kappa = computeCohenKappa(table, createAgreementWeights("quadratic", 10));
    if (!("value" in kappa)) throw new Error(kappa.undefined);
    expect(kappa.value).toBeCloseTo(0.8, 12);
    expect(kappa.high - kappa.low).toBeGreaterThan(0.5);
  });

  it("knows nothing of the spread from one unit", () => {
    expect(
      computeCohenKappa([
        [0, 1],
        [0, 0],
      ]),
    ).toMatchObject({ value: 0, low: -1, high: 1 });
  });

  it("refuses a table that is not square", () => {
    expect(() => computeCohenKappa([[1, 2]])).toThrow(RangeError);
    expect(() => toAgreementWeights([[1]])).toThrow(RangeError);
    expect(() =>
      toAgreementWeights([
        [0, -1],
        [1, 0],
      ]),
    ).toThrow(RangeError);
  });
});
