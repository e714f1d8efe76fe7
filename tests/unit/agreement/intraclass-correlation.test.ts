import { describe, expect, it } from "vitest";
import {
  computeIcc,
  computeMeanSquares,
  computeOneWayIcc,
  type IccForm,
} from "@/lib/agreement/intraclass-correlation";
import { SHROUT_SCORES } from "@/tests/support/agreement/published-tables";

describe("Shrout and Fleiss 1979, 6 targets x 4 judges (check values 4.5)", () => {
  const squares = computeMeanSquares(SHROUT_SCORES);

  it("mean squares 11.24167, 6.263889, 32.48611, 1.019444", () => {
    expect(squares.between).toBeCloseTo(11.24167, 5);
    expect(squares.within).toBeCloseTo(6.263889, 6);
    expect(squares.judge).toBeCloseTo(32.48611, 5);
    expect(squares.residual).toBeCloseTo(1.019444, 6);
  });

  it("F(5,18) 1.7947 and F(5,15) 11.0272", () => {
    expect(squares.between / squares.within).toBeCloseTo(1.7947, 4);
    expect(squares.between / squares.residual).toBeCloseTo(11.0272, 4);
  });

  const rows: [IccForm, number, number, number][] = [
    ["1,1", 0.16574, -0.1329, 0.7226],
    ["2,1", 0.28976, 0.0188, 0.7611],
    ["3,1", 0.71484, 0.3425, 0.9459],
    ["1,k", 0.4428, -0.8844, 0.9124],
    ["2,k", 0.62005, 0.0711, 0.9272],
    ["3,k", 0.90932, 0.6757, 0.9859],
  ];
  it.each(rows)("ICC(%s) is %f with interval %f to %f (psych)", (form, value, low, high) => {
    expect(computeIcc(squares, form)).toEqual({
      value: expect.closeTo(value, 5),
      low: expect.closeTo(low, 4),
      high: expect.closeTo(high, 4),
    });
  });

  it("the one-way form from unequal rows equals ICC(1,1) where rows are equal", () => {
    const exact = computeIcc(squares, "1,1");
    if ("undefined" in exact) throw new Error(exact.undefined);
    expect(computeOneWayIcc(SHROUT_SCORES)).toEqual({
      value: expect.closeTo(exact.value, 12),
      low: expect.closeTo(exact.low, 9),
      high: expect.closeTo(exact.high, 9),
    });
  });
});

describe("edges", () => {
  it("equal scores everywhere: every form is undefined", () => {
    const squares = computeMeanSquares([
      [3, 3],
      [3, 3],
    ]);
    for (const form of ["1,1", "2,1", "3,1", "1,k", "2,k", "3,k"] as const) {
      expect(computeIcc(squares, form)).toEqual({
        undefined: expect.stringContaining("all ratings are equal"),
      });
    }
  });

  it("perfect agreement is 1", () => {
    const squares = computeMeanSquares([
      [1, 1],
      [2, 2],
      [5, 5],
    ]);
    for (const form of ["1,1", "2,1", "3,1", "3,k"] as const) {
      expect(computeIcc(squares, form)).toMatchObject({ value: 1, high: 1 });
    }
  });

  it("a constant shift between judges leaves ICC(3,1) at 1 and lowers the others", () => {
    const squares = computeMeanSquares([
      [1, 2],
      [2, 3],
      [5, 6],
      [7, 8],
    ]);
    expect(computeIcc(squares, "3,1")).toMatchObject({ value: expect.closeTo(1, 12) });
    const absolute = computeIcc(squares, "2,1");
    if ("undefined" in absolute) throw new Error(absolute.undefined);
    expect(absolute.value).toBeLessThan(1);
    expect(absolute.low).toBeLessThanOrEqual(absolute.value);
    expect(absolute.high).toBeGreaterThanOrEqual(absolute.value);
  });

  it("no spread between targets: the form for mean ratings is undefined", () => {
    const squares = computeMeanSquares([
      [1, 2],
      [2, 1],
    ]);
    expect(computeIcc(squares, "1,1")).toMatchObject({ value: expect.closeTo(-1, 12) });
    expect(computeIcc(squares, "1,k")).toHaveProperty("undefined");
  });

  it("says why a one-way form is undefined", () => {
    expect(computeOneWayIcc([])).toEqual({ undefined: "fewer than two items were rated" });
    expect(computeOneWayIcc([[1], [2]])).toEqual({ undefined: "no item was rated by two raters" });
    expect(computeOneWayIcc([[1, 1], [1]])).toEqual({ undefined: expect.stringContaining("equal") });
  });

  it("refuses an incomplete table", () => {
    expect(() => computeMeanSquares([[1, 2], [1]])).toThrow(RangeError);
    expect(() => computeMeanSquares([[1, 2]])).toThrow(RangeError);
  });
});
