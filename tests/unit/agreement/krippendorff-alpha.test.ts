import { describe, expect, it } from "vitest";
import { listPairableUnits, tallyCoincidences } from "@/lib/agreement/coincidences";
import { type AlphaMetric, computeKrippendorffAlpha } from "@/lib/agreement/krippendorff-alpha";
import { groupUnitPatterns, toUnitCounts } from "@/lib/agreement/unit-patterns";
import { KRIPPENDORFF_FOUR_OBSERVERS } from "@/tests/support/agreement/published-tables";

const toPatterns = (ratings: readonly (readonly (number | null)[])[], categories: number) =>
  groupUnitPatterns(toUnitCounts(ratings, categories), categories);
const toPlaces = (text: string, letters: string) =>
  [...text.replaceAll(" ", "")].map((letter) => (letter === "." ? null : letters.indexOf(letter)));

describe("Krippendorff 2011 (check values 4.3)", () => {
  it("binary, two observers: 0.0952 (printed .095)", () => {
    const table = toPatterns([toPlaces("0100000010", "01"), toPlaces("1110010000", "01")], 2);
    expect(computeKrippendorffAlpha(table, "nominal")).toMatchObject({ value: expect.closeTo(0.0952, 4) });
  });

  it("nominal, two observers, 12 units: 0.6919643 (printed .692)", () => {
    const table = toPatterns(
      [toPlaces("aabbdcccedda", "abcde"), toPlaces("babbbcccEddd".toLowerCase(), "abcde")],
      5,
    );
    expect(computeKrippendorffAlpha(table, "nominal")).toMatchObject({ value: expect.closeTo(0.6919643, 7) });
  });

  it("the same with the second observer's unit 10 blank: 0.6648936", () => {
    const table = toPatterns([toPlaces("aabbdcccedda", "abcde"), toPlaces("babbbccce.dd", "abcde")], 5);
    expect(computeKrippendorffAlpha(table, "nominal")).toMatchObject({ value: expect.closeTo(0.6648936, 7) });
  });
});

describe("Krippendorff 2011, four observers with missing ratings (check values 4.3)", () => {
  const table = toPatterns(KRIPPENDORFF_FOUR_OBSERVERS, 5);
  const pairable = listPairableUnits(table);
  const coincidences = tallyCoincidences(pairable, pairable.units);
  const at = (c: number, k: number) => coincidences[(c - 1) * 5 + (k - 1)];

  it("coincidences: diagonal 7 10 8 4 3, the printed fractions off it, n = 40", () => {
    expect([1, 2, 3, 4, 5].map((c) => at(c, c))).toEqual([7, 10, 8, 4, 3].map((v) => expect.closeTo(v, 12)));
    for (const [c, k] of [
      [1, 3],
      [1, 4],
      [2, 4],
      [3, 4],
    ] as const)
      expect(at(c, k)).toBeCloseTo(1 / 3, 12);
    expect(at(1, 2)).toBeCloseTo(4 / 3, 12);
    expect(at(2, 3)).toBeCloseTo(4 / 3, 12);
    expect(coincidences.reduce((sum, value) => sum + value, 0)).toBeCloseTo(40, 12);
  });

  it("margins 9 13 10 5 3", () => {
    const margins = [1, 2, 3, 4, 5].map((c) => [1, 2, 3, 4, 5].reduce((sum, k) => sum + (at(c, k) ?? 0), 0));
    expect(margins).toEqual([9, 13, 10, 5, 3].map((value) => expect.closeTo(value, 12)));
  });

  const values = [1, 2, 3, 4, 5];
  const rows: [AlphaMetric, number][] = [
    ["nominal", 0.7434210526],
    ["ordinal", 0.8153875038],
    ["interval", 0.8491071429],
    ["ratio", 0.7974027747],
  ];
  it.each(rows)("%s: %f", (metric, value) => {
    const alpha = computeKrippendorffAlpha(table, metric, { values });
    expect(alpha).toMatchObject({ value: expect.closeTo(value, 9) });
  });

  it("irrCAC's alpha with linear weights, 0.80038, is not one of these metrics: interval squares distances", () => {
    expect(computeKrippendorffAlpha(table, "interval")).toMatchObject({ value: expect.closeTo(0.84911, 5) });
  });

  it("the bootstrap interval holds the value and is the same for the same seed only", () => {
    const first = computeKrippendorffAlpha(table, "ordinal", { seed: 7 });
    expect(computeKrippendorffAlpha(table, "ordinal", { seed: 7 })).toEqual(first);
    expect(computeKrippendorffAlpha(table, "ordinal", { seed: 8 })).not.toEqual(first);
    if ("undefined" in first) throw new Error(first.undefined);
    expect(first.low).toBeLessThan(first.value);
    expect(first.high).toBeGreaterThan(first.value);
  });

  it("refuses values that do not fit the scale", () => {
    expect(() => computeKrippendorffAlpha(table, "ratio", { values: [1, 2] })).toThrow(RangeError);
  });
});

describe("intervals at the edges", () => {
  it("full agreement on ten units is not certainty", () => {
    const table = groupUnitPatterns([...Array(5).fill([2, 0]), ...Array(5).fill([0, 2])], 2);
    // Chance agreement is 2 * 10 * 9 / (20 * 19); Wilson's low end for 10 of 10 is 0.7224672.
    const expected = 180 / 380;
    const low = (0.7224672 - expected) / (1 - expected);
    for (const metric of ["nominal", "ordinal", "interval"] as const) {
      expect(computeKrippendorffAlpha(table, metric)).toEqual({
        value: 1,
        low: expect.closeTo(low, 6),
        high: 1,
      });
    }
  });

  it("one paired unit carries no interval", () => {
    const table = groupUnitPatterns([[1, 1]], 2);
    expect(computeKrippendorffAlpha(table, "nominal")).toEqual({ value: 0, low: -1, high: 1 });
  });

  it("two units that disagree alike carry none either", () => {
    const table = groupUnitPatterns(
      [
        [1, 1],
        [1, 1],
      ],
      2,
    );
    expect(computeKrippendorffAlpha(table, "nominal")).toMatchObject({ low: -1, high: 1 });
  });

  it("ratio takes 0 against 0 as no difference", () => {
    const table = groupUnitPatterns(
      [
        [2, 0],
        [0, 2],
        [1, 1],
      ],
      2,
    );
    const alpha = computeKrippendorffAlpha(table, "ratio", { values: [0, 0] });
    expect(alpha).toHaveProperty("undefined");
  });
});
