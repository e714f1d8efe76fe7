import { describe, expect, it } from "vitest";
import { computeSortedQuantile } from "@/lib/agreement/bootstrap-interval";
import { computeClusteredShare } from "@/lib/agreement/clustered-share";
import { drawBinomial } from "@/lib/agreement/draw-binomial";
import { computeFQuantile, computeT975 } from "@/lib/agreement/f-quantile";
import { computeFunnelLimits, placeInFunnel } from "@/lib/agreement/funnel-limits";
import { computeIncompleteBeta, computeLogGamma } from "@/lib/agreement/incomplete-beta";
import { computeMeanInterval } from "@/lib/agreement/mean-interval";
import { computeSignedBias } from "@/lib/agreement/signed-bias";
import { computeWilsonInterval } from "@/lib/agreement/wilson-interval";
import { createSeededRandom } from "@/lib/base/seeded-random";

const interval = (value: number, low: number, high: number, digits: number) => ({
  value: expect.closeTo(value, 12),
  low: expect.closeTo(low, digits),
  high: expect.closeTo(high, digits),
});

describe("Wilson's interval", () => {
  // Newcombe 1998, Stat. Med. 17, 857-872, table I, method 3 (from memory; R 4.2 prop.test without correction agrees).
  const rows: [number, number, number, number][] = [
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ];
  it.each(rows)("%i of %i: %f to %f", (hits, trials, low, high) => {
    expect(computeWilsonInterval(hits, trials)).toEqual(interval(hits / trials, low, high, 4));
  });

  it("10 of 10 starts at 0.722467 (R prop.test) and ends at 1", () => {
    expect(computeWilsonInterval(10, 10)).toEqual({
      value: 1,
      low: expect.closeTo(0.722467200137, 9),
      high: 1,
    });
  });

  it("nothing of nothing is undefined, more than all is refused", () => {
    expect(computeWilsonInterval(0, 0, "no stones")).toEqual({ undefined: "no stones" });
    expect(() => computeWilsonInterval(2, 1)).toThrow(RangeError);
    expect(() => computeWilsonInterval(-1, 1)).toThrow(RangeError);
    expect(() => computeWilsonInterval(Number.NaN, 1)).toThrow(RangeError);
  });
});

describe("distributions (R 4.2: qf, qt, pbeta, lgamma)", () => {
  const quantiles: [number, number, number, number][] = [
    [0.975, 5, 18, 3.38196780588],
    [0.975, 18, 5, 6.36188320465],
    [0.975, 5, 15, 3.57641534928],
    [0.95, 1, 10, 4.96460274373],
    [0.975, 3, 0.7, 14748.7876055],
    [0.025, 7, 2.5, 0.162278475457],
    [0.975, 999, 2997, 1.10517977167],
  ];
  it.each(quantiles)("qf(%f, %f, %f) = %f", (probability, numerator, denominator, value) => {
    expect(computeFQuantile(probability, numerator, denominator) / value).toBeCloseTo(1, 8);
  });

  it("qt(.975) for 1, 2, 11, 29, 999 degrees", () => {
    const values = [12.7062047362, 4.30265272975, 2.20098516009, 2.04522964213, 1.96234146113];
    for (const [i, degrees] of [1, 2, 11, 29, 999].entries()) {
      expect(computeT975(degrees)).toBeCloseTo(values[i] ?? 0, 7);
    }
  });

  it("pbeta and lgamma", () => {
    expect(computeIncompleteBeta(0.3, 2, 5)).toBeCloseTo(0.579825, 12);
    expect(computeIncompleteBeta(0.99, 30, 0.5)).toBeCloseTo(0.439334368905, 11);
    expect(computeIncompleteBeta(1e-4, 0.5, 0.5)).toBeCloseTo(0.00636630383175, 12);
    expect([computeIncompleteBeta(0, 2, 3), computeIncompleteBeta(1, 2, 3)]).toEqual([0, 1]);
    const logs = [2.25271265173, 0.572364942925, -0.120782237635, 12.8018274801, 361.435540468];
    for (const [i, x] of [0.1, 0.5, 1.5, 10, 100.5].entries()) {
      expect(computeLogGamma(x)).toBeCloseTo(logs[i] ?? 0, 9);
    }
  });

  it("refuse what has no quantile", () => {
    expect(() => computeFQuantile(1, 2, 2)).toThrow(RangeError);
    expect(() => computeFQuantile(0.5, 0, 2)).toThrow(RangeError);
    expect(() => computeLogGamma(0)).toThrow(RangeError);
  });
});

describe("the mean and signed bias", () => {
  it("differences 0 1 -1 2 0 0 1 1: 0.5, from -0.274005 to 1.274005 (R t.test)", () => {
    const pairs = [0, 1, -1, 2, 0, 0, 1, 1].map((step) => [3, 3 + step] as const);
    expect(computeSignedBias(pairs, 10)).toEqual(interval(0.5, -0.274004973075, 1.27400497308, 8));
  });

  it("harsh is positive, lenient negative, on a scale listed best first", () => {
    expect(
      computeSignedBias(
        [
          [2, 4],
          [5, 6],
          [1, 1],
        ],
        10,
      ),
    ).toMatchObject({ value: 1 });
    expect(
      computeSignedBias(
        [
          [4, 2],
          [6, 5],
          [1, 1],
        ],
        10,
      ),
    ).toMatchObject({ value: -1 });
  });

  it("one pair tells nothing of the spread: the whole range of the scale", () => {
    expect(computeSignedBias([[2, 3]], 5)).toEqual({ value: 1, low: -4, high: 4 });
  });

  it("pairs that differ alike are not certain either: one step, in the share that may have gone unmet", () => {
    const pairs = Array.from({ length: 10 }, () => [2, 2] as const);
    const half = 1 - 0.722467200137;
    expect(computeSignedBias(pairs, 10)).toEqual(interval(0, -half, half, 9));
  });

  it("no pair is undefined", () => {
    expect(computeSignedBias([], 10)).toEqual({ undefined: "no pair of grades to compare" });
    const none = { count: 0, sum: 0, sumOfSquares: 0 };
    expect(computeMeanInterval(none, { least: 0, most: 1, unseen: 1 }, "no plot")).toEqual({
      undefined: "no plot",
    });
  });

  it("is cut to the range of single values", () => {
    const sums = { count: 2, sum: 190, sumOfSquares: 90 ** 2 + 100 ** 2 };
    expect(computeMeanInterval(sums, { least: 0, most: 100, unseen: 100 })).toMatchObject({
      value: 95,
      high: 100,
    });
  });
});

describe("shares in clusters", () => {
  it("is wider than Wilson's where students differ, and about Wilson's where they do not", () => {
    const alike = Array.from({ length: 200 }, (_, i) => ({ hits: 5 + (i % 2), trials: 11 }));
    const apart = Array.from({ length: 200 }, (_, i) => ({ hits: i % 2 === 0 ? 0 : 11, trials: 11 }));
    const width = (statistic: ReturnType<typeof computeClusteredShare>) => {
      if ("undefined" in statistic) throw new Error(statistic.undefined);
      return statistic.high - statistic.low;
    };
    const plain = width(computeWilsonInterval(1100, 2200));
    expect(width(computeClusteredShare(alike)) / plain).toBeCloseTo(1, 1);
    // All or nothing: each student is worth one trial, so the design effect is 11.
    expect(width(computeClusteredShare(apart)) / plain).toBeCloseTo(Math.sqrt(11), 1);
  });

  it("says why it is undefined", () => {
    expect(computeClusteredShare([], "no marks")).toEqual({ undefined: "no marks" });
    expect(computeClusteredShare([{ hits: 0, trials: 0 }], "no marks")).toEqual({ undefined: "no marks" });
    expect(computeClusteredShare([{ hits: 1, trials: 3 }])).toEqual({
      undefined: expect.stringContaining("one source"),
    });
  });

  it("keeps its value and Wilson's form where all was found", () => {
    const all = computeClusteredShare([
      { hits: 4, trials: 4 },
      { hits: 6, trials: 6 },
    ]);
    expect(all).toMatchObject({ value: 1, high: 1 });
  });
});

describe("funnel limits (Spiegelhalter 2005)", () => {
  it("about 0.5 with 100 trials: 0.402 to 0.598", () => {
    expect(computeFunnelLimits(0.5, 100)).toEqual({
      trials: 100,
      low: expect.closeTo(0.402, 3),
      high: expect.closeTo(0.598, 3),
    });
  });

  it("a group lies beyond them exactly when its own Wilson interval misses the common share", () => {
    for (let hits = 0; hits <= 40; hits += 1) {
      const { low, high } = computeFunnelLimits(0.37, 40);
      const place = hits / 40 < low ? "below" : hits / 40 > high ? "above" : "within";
      expect(placeInFunnel(hits, 40, 0.37)).toBe(place);
    }
  });

  it("no trials lie within; limits of nothing are refused", () => {
    expect(placeInFunnel(0, 0, 0.5)).toBe("within");
    expect(() => computeFunnelLimits(0.5, 0)).toThrow(RangeError);
    expect(() => computeFunnelLimits(1.5, 10)).toThrow(RangeError);
  });
});

describe("random draws behind the bootstrap", () => {
  const cases: [number, number][] = [
    [5, 0.3],
    [40, 0.2],
    [40, 0.5],
    [1000, 0.03],
    [200, 0.85],
  ];
  it.each(cases)("binomial(%i, %f) follows its exact distribution (chi-squared, 5 sigma)", (trials, p) => {
    const random = createSeededRandom(`binomial ${trials} ${p}`);
    const draws = 40_000;
    const seen = new Array<number>(trials + 1).fill(0);
    for (let i = 0; i < draws; i += 1) {
      const hits = drawBinomial(random, trials, p);
      seen[hits] = (seen[hits] ?? 0) + 1;
    }
    expect(seen.reduce((sum, count) => sum + count, 0)).toBe(draws);
    const logChoose = (k: number) =>
      computeLogGamma(trials + 1) - computeLogGamma(k + 1) - computeLogGamma(trials - k + 1);
    const cells = seen.flatMap((count, k) => {
      const expected = draws * Math.exp(logChoose(k) + k * Math.log(p) + (trials - k) * Math.log(1 - p));
      return expected < 10 ? [] : [(count - expected) ** 2 / expected];
    });
    const chiSquared = cells.reduce((sum, cell) => sum + cell, 0);
    expect(chiSquared).toBeLessThan(cells.length + 5 * Math.sqrt(2 * cells.length));
  });

  it("has sure ends", () => {
    const random = createSeededRandom(1);
    expect(drawBinomial(random, 0, 0.5)).toBe(0);
    expect(drawBinomial(random, 9, 0)).toBe(0);
    expect(drawBinomial(random, 9, 1)).toBe(9);
  });

  it("quantiles of a sorted list (Hyndman and Fan's type 7, R's default)", () => {
    expect(computeSortedQuantile([1, 2, 3, 4], 0.25)).toBe(1.75);
    expect(computeSortedQuantile([5], 0.9)).toBe(5);
  });
});
