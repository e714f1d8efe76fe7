import { describe, expect, it } from "vitest";
import { computeGospa, computeGospaShare } from "@/lib/agreement/gospa";
import { computeOspa } from "@/lib/agreement/ospa";
import { solveAssignment } from "@/lib/agreement/solve-assignment";

type Point = readonly [number, number];
const distance = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1]);

const REFERENCE: readonly Point[] = [
  [2, 2],
  [4, 5],
  [7, 4],
];
const PLOTTED: Record<string, readonly Point[]> = {
  A: REFERENCE,
  B: REFERENCE.slice(0, 2),
  C: [...REFERENCE, [0, 9]],
  D: [
    [2, 3],
    [4, 5],
    [7, 4],
  ],
  E: [
    [2.5, 2],
    [4, 5.3],
    [9.9, 9.9],
  ],
  F: [
    [2.5, 2],
    [2, 2.4],
    [4, 5],
    [7, 4],
  ],
  G: [],
};

describe("worked values of check values 5.4, cut-off 3", () => {
  const rows: [string, number, number, number, number, number, number][] = [
    ["A", 1, 0, 0, 0, 0, 0],
    ["A", 2, 0, 0, 0, 0, 0],
    ["B", 1, 1, 1.5, 0, 1.5, 0],
    ["B", 2, 1.7320508, 2.1213203, 0, 4.5, 0],
    ["C", 1, 0.75, 1.5, 0, 0, 1.5],
    ["C", 2, 1.5, 2.1213203, 0, 0, 4.5],
    ["D", 1, 0.3333333, 1, 1, 0, 0],
    ["D", 2, 0.5773503, 1, 1, 0, 0],
    ["E", 1, 1.2666667, 3.8, 0.8, 1.5, 1.5],
    ["E", 2, 1.764464, 3.0561414, 0.34, 4.5, 4.5],
    ["F", 1, 0.85, 1.9, 0.4, 0, 1.5],
    ["F", 2, 1.5132746, 2.1587033, 0.16, 0, 4.5],
    ["G", 1, 3, 4.5, 0, 4.5, 0],
    ["G", 2, 3, 3.6742346, 0, 13.5, 0],
  ];
  it.each(rows)(
    "%s of order %i: OSPA %f, GOSPA %f = %f + %f + %f",
    (name, order, ospa, gospa, location, missed, strays) => {
      const plotted = PLOTTED[name] ?? [];
      const options = { distance, cutOff: 3, order };
      expect(computeOspa(REFERENCE, plotted, options)).toBeCloseTo(ospa, 6);
      expect(computeGospa(REFERENCE, plotted, options)).toMatchObject({
        value: expect.closeTo(gospa, 6),
        location: expect.closeTo(location, 10),
        overlooked: expect.closeTo(missed, 10),
        strays: expect.closeTo(strays, 10),
      });
    },
  );

  const shares: [string, number][] = [
    ["A", 1],
    ["B", 0.8],
    ["C", 0.8571],
    ["D", 0.8889],
    ["E", 0.5778],
    ["F", 0.819],
    ["G", 0],
  ];
  it.each(shares)("%s as a share, order 1: %f", (name, share) => {
    const value = computeGospaShare(REFERENCE, PLOTTED[name] ?? [], { distance, cutOff: 3, order: 1 });
    expect(value).toBeCloseTo(share, 4);
  });
});

describe("tests of the Stone Soup tracking library (MIT; check values 5.4)", () => {
  const line = [0, 1, 2, 3, 4];
  const shifted = (by: number) => line.map((x) => x + by);
  const options = { distance: (a: number, b: number) => Math.abs(a - b), cutOff: 10, order: 1 };

  it("half a step apart: OSPA 0.5, GOSPA 2.5", () => {
    expect(computeOspa(line, shifted(0.5), options)).toBeCloseTo(0.5, 12);
    expect(computeGospa(line, shifted(0.5), options).value).toBeCloseTo(2.5, 12);
  });

  it("a whole step apart: GOSPA 5", () => {
    expect(computeGospa(line, shifted(1), options).value).toBeCloseTo(5, 12);
  });

  it.each([1, 2, Number.POSITIVE_INFINITY])("a shift of 0.2 is OSPA 0.2 for order %f", (order) => {
    expect(computeOspa(line, shifted(0.2), { ...options, order })).toBeCloseTo(0.2, 12);
  });
});

describe("edges", () => {
  const options = { distance, cutOff: 3, order: 2 };

  it("two empty sets are equal", () => {
    expect(computeOspa([], [], options)).toBe(0);
    expect(computeGospa([], [], options).value).toBe(0);
    expect(computeGospaShare([], [], options)).toBe(1);
  });

  it("of infinite order, sets of unequal size are c apart", () => {
    expect(computeOspa(REFERENCE, REFERENCE.slice(1), { ...options, order: Number.POSITIVE_INFINITY })).toBe(
      3,
    );
  });

  it("a pair exactly at the cut-off is not paired", () => {
    const { pairs, value } = computeGospa([[0, 0] as Point], [[3, 0] as Point], { ...options, order: 1 });
    expect(pairs).toEqual([]);
    expect(value).toBe(3);
  });

  it("refuses a cut-off or an order out of range", () => {
    expect(() => computeOspa(REFERENCE, [], { ...options, cutOff: 0 })).toThrow(RangeError);
    expect(() => computeGospa(REFERENCE, [], { ...options, order: 0.5 })).toThrow(RangeError);
    expect(() => computeGospa(REFERENCE, [], { ...options, order: Number.POSITIVE_INFINITY })).toThrow(
      RangeError,
    );
  });
});

describe("the assignment behind them (check values 6)", () => {
  const total = (costs: readonly (readonly number[])[]) =>
    solveAssignment(costs).reduce(
      (sum, column, row) => sum + (column < 0 ? 0 : (costs[row]?.[column] ?? 0)),
      0,
    );

  it("DIMACS example: 118 by columns 0 3 2 1 4", () => {
    const costs = [
      [22, 30, 26, 16, 25],
      [27, 29, 28, 20, 32],
      [33, 25, 21, 29, 23],
      [24, 24, 30, 19, 26],
      [30, 33, 32, 37, 31],
    ];
    expect(total(costs)).toBe(118);
    expect(solveAssignment(costs)).toEqual([0, 3, 2, 1, 4]);
  });

  it("3 x 3 examples: 5 by 1 0 2, and 20 by 1 0 2", () => {
    expect(
      solveAssignment([
        [4, 1, 3],
        [2, 0, 5],
        [3, 2, 2],
      ]),
    ).toEqual([1, 0, 2]);
    expect(
      solveAssignment([
        [10, 5, 13],
        [3, 9, 18],
        [10, 6, 12],
      ]),
    ).toEqual([1, 0, 2]);
  });

  it("rectangular with forbidden cells: 47 by 4 0 1 2 (read as the table's rows)", () => {
    const X = 1000;
    const costs = [
      [X, 2, X, X, 3],
      [7, X, 23, X, X],
      [17, 24, X, X, X],
      [X, 6, 13, 20, X],
    ];
    expect(solveAssignment(costs)).toEqual([4, 0, 1, 2]);
    expect(total(costs)).toBe(47);
  });

  it("more rows than columns leave rows over; empty in, empty out", () => {
    expect(solveAssignment([[5], [1], [3]])).toEqual([-1, 0, -1]);
    expect(solveAssignment([])).toEqual([]);
    expect(solveAssignment([[], []])).toEqual([-1, -1]);
  });

  it("refuses costs that are not finite", () => {
    expect(() => solveAssignment([[Number.NaN]])).toThrow(RangeError);
    expect(() => solveAssignment([[1, Number.POSITIVE_INFINITY]])).toThrow(RangeError);
  });
});
