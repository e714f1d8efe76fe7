import { describe, expect, it } from "vitest";
import { createAgreementWeights, type WeightKind } from "@/lib/agreement/agreement-weights";
import { computeBrennanPrediger } from "@/lib/agreement/brennan-prediger";
import { computeCohenKappa } from "@/lib/agreement/cohen-kappa";
import { computeCongerKappa } from "@/lib/agreement/conger-kappa";
import { computeFleissKappa, computeFleissZ, listFleissCategoryKappas } from "@/lib/agreement/fleiss-kappa";
import { computeGwetAc } from "@/lib/agreement/gwet-ac";
import { computeKrippendorffAlpha } from "@/lib/agreement/krippendorff-alpha";
import { computeObservedAgreement } from "@/lib/agreement/observed-agreement";
import { groupUnitPatterns, toUnitCounts } from "@/lib/agreement/unit-patterns";
import {
  FLEISS_DIAGNOSES,
  KRIPPENDORFF_FOUR_OBSERVERS,
  TWO_RATER_COUNTS,
} from "@/tests/support/agreement/published-tables";

const near = (value: number, digits: number) => ({ value: expect.closeTo(value, digits) });

/** Units of a two-rater table as counts per category. */
function toUnits(table: readonly (readonly number[])[]): number[][] {
  return table.flatMap((row, i) =>
    row.flatMap((count, j) =>
      Array.from({ length: count }, () => table.map((_, k) => Number(k === i) + Number(k === j))),
    ),
  );
}

describe("Fleiss 1971, 30 patients, 6 raters (check values 4.2)", () => {
  const table = groupUnitPatterns(FLEISS_DIAGNOSES, 5);
  const observed = computeObservedAgreement(table, createAgreementWeights("identity", 5));

  it("is the printed table: column sums 26 26 30 55 43", () => {
    const sums = [0, 1, 2, 3, 4].map((k) => FLEISS_DIAGNOSES.reduce((sum, row) => sum + (row[k] ?? 0), 0));
    expect(FLEISS_DIAGNOSES).toHaveLength(30);
    expect(sums).toEqual([26, 26, 30, 55, 43]);
  });

  it("observed agreement 0.5555556 and shares .1444 .1444 .1667 .3056 .2389", () => {
    expect(observed.agreement).toBeCloseTo(0.5555556, 7);
    const shares = [0.1444, 0.1444, 0.1667, 0.3056, 0.2389];
    for (const [k, share] of shares.entries()) expect(observed.shares[k]).toBeCloseTo(share, 4);
  });

  it("kappa 0.4302445, printed .430 with z 17.7", () => {
    expect(computeFleissKappa(table)).toMatchObject(near(0.4302445, 7));
    expect(computeFleissZ(table)).toEqual(near(17.7, 1));
  });

  it("per category .245 .245 .520 .471 .566", () => {
    const kappas = listFleissCategoryKappas(table);
    expect(kappas).toEqual([0.245, 0.245, 0.52, 0.471, 0.566].map((value) => near(value, 3)));
  });

  it("AC1 of the same table 0.4478845", () => {
    expect(computeGwetAc(table)).toMatchObject(near(0.4478845, 7));
  });

  it("first 15 rows: AC1 0.4448007, Fleiss 0.4139265, alpha 0.4204384, Brennan-Prediger 0.4388889 (4.4)", () => {
    const half = groupUnitPatterns(FLEISS_DIAGNOSES.slice(0, 15), 5);
    expect(computeGwetAc(half)).toMatchObject(near(0.4448007, 7));
    expect(computeFleissKappa(half)).toMatchObject(near(0.4139265, 7));
    expect(computeKrippendorffAlpha(half, "nominal")).toMatchObject(near(0.4204384, 7));
    expect(computeBrennanPrediger(half)).toMatchObject(near(0.4388889, 7));
  });
});

describe("four observers with missing ratings, weighted coefficients (check values 4.4, irrCAC)", () => {
  const table = groupUnitPatterns(toUnitCounts(KRIPPENDORFF_FOUR_OBSERVERS, 5), 5);
  const rows: [WeightKind, number, number, number, number, number][] = [
    ["identity", 0.77544, 0.76117, 0.77273, 0.76282, 0.8181818],
    ["linear", 0.85874, 0.81794, 0.84848, 0.81378, 0.9393939],
    ["ordinal", 0.89894, 0.85021, 0.88636, 0.84366, 0.9681818],
    ["quadratic", 0.914, 0.86494, 0.90152, 0.85771, 0.9753788],
  ];

  it.each(rows)(
    "%s weights: AC, Fleiss, Brennan-Prediger, Conger, agreement",
    (kind, ac, fleiss, bp, conger, pa) => {
      const weights = createAgreementWeights(kind, 5);
      expect(computeGwetAc(table, weights)).toMatchObject(near(ac, 5));
      expect(computeFleissKappa(table, weights)).toMatchObject(near(fleiss, 5));
      expect(computeBrennanPrediger(table, weights)).toMatchObject(near(bp, 5));
      expect(computeCongerKappa(KRIPPENDORFF_FOUR_OBSERVERS, 5, weights)).toEqual(near(conger, 5));
      expect(computeObservedAgreement(table, weights).agreement).toBeCloseTo(pa, 7);
    },
  );

  it("AC1 has the printed standard error .14295", () => {
    expect(computeGwetAc(table)).toMatchObject({ standardError: expect.closeTo(0.14295, 5) });
  });
});

describe("two raters, 100 units (check values 4.4, irrCAC)", () => {
  const table = groupUnitPatterns(toUnits(TWO_RATER_COUNTS), 3);

  it("agreement .89, kappa 0.7964094, Scott's pi 0.7962397, AC1 0.8493305, Brennan-Prediger 0.835, alpha 0.7972585", () => {
    expect(computeObservedAgreement(table, createAgreementWeights("identity", 3)).agreement).toBeCloseTo(
      0.89,
      12,
    );
    expect(computeCohenKappa(TWO_RATER_COUNTS)).toMatchObject(near(0.7964094, 7));
    expect(computeFleissKappa(table)).toMatchObject(near(0.7962397, 7));
    expect(computeGwetAc(table)).toMatchObject(near(0.8493305, 7));
    expect(computeBrennanPrediger(table)).toMatchObject(near(0.835, 7));
    expect(computeKrippendorffAlpha(table, "nominal")).toMatchObject(near(0.7972585, 7));
  });
});

describe("edges", () => {
  const oneGrade = groupUnitPatterns(
    [
      [0, 3],
      [0, 2],
    ],
    2,
  );

  it("one category only: kappa and alpha are undefined, AC1 and Brennan-Prediger are not", () => {
    expect(computeFleissKappa(oneGrade)).toEqual({ undefined: expect.stringContaining("only one grade") });
    expect(computeFleissZ(oneGrade)).toEqual({ undefined: expect.stringContaining("only one grade") });
    expect(computeKrippendorffAlpha(oneGrade, "ordinal")).toEqual({
      undefined: expect.stringContaining("only one"),
    });
    expect(
      computeCongerKappa(
        [
          [1, 1],
          [1, 1],
        ],
        2,
      ),
    ).toEqual({ undefined: expect.stringContaining("only one grade") });
    expect(computeGwetAc(oneGrade)).toMatchObject({ value: 1, high: 1 });
    expect(computeBrennanPrediger(oneGrade)).toMatchObject({ value: 1, high: 1 });
  });

  it("one rating for each unit: everything is undefined", () => {
    const single = groupUnitPatterns(
      [
        [1, 0],
        [0, 1],
      ],
      2,
    );
    const reason = { undefined: "no item was rated by two raters" };
    expect(computeFleissKappa(single)).toEqual(reason);
    expect(computeGwetAc(single)).toEqual(reason);
    expect(computeBrennanPrediger(single)).toEqual(reason);
    expect(computeKrippendorffAlpha(single, "nominal")).toEqual(reason);
    expect(computeCongerKappa([[0, 1]], 2)).toEqual(reason);
  });

  it("no unit at all: everything is undefined", () => {
    const empty = groupUnitPatterns([], 3);
    expect(computeFleissKappa(empty)).toHaveProperty("undefined");
    expect(computeGwetAc(empty)).toHaveProperty("undefined");
    expect(computeBrennanPrediger(empty)).toHaveProperty("undefined");
    expect(computeKrippendorffAlpha(empty, "ratio")).toHaveProperty("undefined");
    expect(computeCongerKappa([], 3)).toHaveProperty("undefined");
  });

  it("a scale of one grade: AC1 is undefined", () => {
    expect(computeGwetAc(groupUnitPatterns([[2]], 1))).toEqual({
      undefined: "the scale has fewer than two grades",
    });
    expect(computeBrennanPrediger(groupUnitPatterns([[2]], 1))).toHaveProperty("undefined");
  });

  it("unequal numbers of ratings: no category kappas", () => {
    const uneven = groupUnitPatterns(
      [
        [1, 1],
        [2, 1],
      ],
      2,
    );
    expect(listFleissCategoryKappas(uneven)[0]).toHaveProperty("undefined");
    expect(computeFleissZ(uneven)).toHaveProperty("undefined");
    expect(listFleissCategoryKappas(groupUnitPatterns([[1, 1, 0]], 3))[2]).toHaveProperty("undefined");
  });

  it("refuses counts that are not counts, and places outside the scale", () => {
    expect(() => groupUnitPatterns([[1, 0.5]], 2)).toThrow(RangeError);
    expect(() => groupUnitPatterns([[1]], 2)).toThrow(RangeError);
    expect(() => toUnitCounts([[2]], 2)).toThrow(RangeError);
  });
});
