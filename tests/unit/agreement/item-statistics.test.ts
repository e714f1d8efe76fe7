import { describe, expect, it } from "vitest";
import {
  computeCronbachAlpha,
  computeItemStatistics,
  computePointBiserial,
} from "@/lib/agreement/item-statistics";
import { LSAT_SIX } from "@/tests/support/agreement/published-tables";

describe("LSAT section 6 (Bock and Lieberman 1970; check values 7.1)", () => {
  const statistics = computeItemStatistics(LSAT_SIX);

  it("1000 persons, score counts 3 20 85 237 357 298", () => {
    expect(statistics.persons).toBe(1000);
    expect(statistics.scoreCounts).toEqual([3, 20, 85, 237, 357, 298]);
  });

  it("mean 3.819, standard deviation 1.035041, alpha 0.2949972", () => {
    expect(statistics.mean).toEqual({ value: expect.closeTo(3.819, 12) });
    expect(statistics.standardDeviation).toEqual({ value: expect.closeTo(1.035041, 6) });
    expect(statistics.alpha).toEqual({ value: expect.closeTo(0.2949972, 7) });
  });

  const rows: [number, number, number, number, number][] = [
    [1, 0.924, 0.3620104, 0.1128327, 0.2753562],
    [2, 0.709, 0.5667721, 0.1531781, 0.2375839],
    [3, 0.553, 0.6184398, 0.1727789, 0.2167995],
    [4, 0.763, 0.5344183, 0.1444281, 0.2459327],
    [5, 0.87, 0.4353664, 0.1215964, 0.2662944],
  ];
  it.each(rows)(
    "item %i: right %f, point-biserial %f, with the rest %f, alpha without %f",
    (i, right, with_, rest, alpha) => {
      expect(statistics.items[i - 1]).toMatchObject({
        rightShare: { value: expect.closeTo(right, 12) },
        pointBiserial: { value: expect.closeTo(with_, 7) },
        restPointBiserial: { value: expect.closeTo(rest, 7) },
        alphaWithout: { value: expect.closeTo(alpha, 7) },
      });
    },
  );

  it("point-biserial of 0001111 with 0..6 is 0.8660254 (scipy)", () => {
    const value = computePointBiserial([0, 0, 0, 1, 1, 1, 1], [0, 1, 2, 3, 4, 5, 6]);
    expect(value).toEqual({ value: expect.closeTo(0.8660254, 7) });
  });
});

describe("edges", () => {
  it("nobody: everything is undefined", () => {
    expect(computeItemStatistics([])).toEqual({
      persons: 0,
      scoreCounts: [0],
      mean: { undefined: "nobody answered" },
      standardDeviation: { undefined: "needs two persons or more" },
      alpha: { undefined: "nobody answered" },
      items: [],
    });
  });

  it("an item that all got right has no correlation", () => {
    const { items } = computeItemStatistics([
      [1, 0],
      [1, 1],
    ]);
    expect(items[0]?.pointBiserial).toHaveProperty("undefined");
    expect(items[0]?.alphaWithout).toEqual({ undefined: "needs two items or more" });
  });

  it("scores that do not vary have no alpha", () => {
    expect(
      computeCronbachAlpha([
        [1, 0],
        [0, 1],
      ]),
    ).toEqual({ undefined: "the scores do not vary" });
  });

  it("refuses ragged tables, other numbers and lists of unequal length", () => {
    expect(() => computeItemStatistics([[1, 0], [1]])).toThrow(RangeError);
    expect(() => computeItemStatistics([[2]])).toThrow(RangeError);
    expect(() => computePointBiserial([1], [1, 2])).toThrow(RangeError);
  });
});
