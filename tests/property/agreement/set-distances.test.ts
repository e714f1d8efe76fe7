import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { computeGospa, computeGospaShare, type SetDistanceOptions } from "@/lib/agreement/gospa";
import { computeOspa } from "@/lib/agreement/ospa";

type Point = readonly [number, number];
const point = fc.tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 9 }));
const points = fc.array(point, { maxLength: 5 });
const order = fc.constantFrom(1, 2, 3);
const toOptions = (p: number): SetDistanceOptions<Point, Point> => ({
  distance: (a, b) => Math.hypot(a[0] - b[0], a[1] - b[1]),
  cutOff: 3,
  order: p,
});

/** GOSPA by trying every one-to-one pairing. */
function computeByBruteForce(reference: readonly Point[], plotted: readonly Point[], p: number): number {
  const { distance, cutOff } = toOptions(p);
  const half = cutOff ** p / 2;
  const best = (row: number, free: readonly Point[]): number => {
    const one = reference[row];
    if (!one) return half * free.length;
    const left = half + best(row + 1, free);
    return free.reduce((least, other, i) => {
      const rest = best(row + 1, [...free.slice(0, i), ...free.slice(i + 1)]);
      return Math.min(least, distance(one, other) ** p + rest);
    }, left);
  };
  return best(0, plotted) ** (1 / p);
}

describe.each([
  ["OSPA", computeOspa<Point, Point>],
  ["GOSPA", (...args: Parameters<typeof computeGospa<Point, Point>>) => computeGospa(...args).value],
] as const)("%s is a metric (Schuhmacher, Vo and Vo 2008; Rahmathullah and others 2017)", (_, measure) => {
  it("is 0 for the same set in any order, and only then", () => {
    fc.assert(
      fc.property(points, points, order, (a, b, p) => {
        expect(measure(a, [...a].reverse(), toOptions(p))).toBeCloseTo(0, 12);
        const sorted = (set: readonly Point[]) =>
          [...set]
            .map((one) => one.join())
            .sort()
            .join(" ");
        if (sorted(a) !== sorted(b)) expect(measure(a, b, toOptions(p))).toBeGreaterThan(0);
      }),
    );
  });

  it("is symmetric", () => {
    fc.assert(
      fc.property(points, points, order, (a, b, p) => {
        expect(measure(a, b, toOptions(p))).toBeCloseTo(measure(b, a, toOptions(p)), 10);
      }),
    );
  });

  it("has no shortcut over a third set", () => {
    fc.assert(
      fc.property(points, points, points, order, (a, b, c, p) => {
        const around = measure(a, b, toOptions(p)) + measure(b, c, toOptions(p));
        expect(measure(a, c, toOptions(p))).toBeLessThanOrEqual(around + 1e-9);
      }),
      { numRuns: 500 },
    );
  });
});

describe("GOSPA", () => {
  it("is the best of all pairings", () => {
    fc.assert(
      fc.property(points, points, order, (a, b, p) => {
        expect(computeGospa(a, b, toOptions(p)).value).toBeCloseTo(computeByBruteForce(a, b, p), 10);
      }),
      { numRuns: 200 },
    );
  });

  it("its parts add up, and its share lies in [0, 1]", () => {
    fc.assert(
      fc.property(points, points, order, (a, b, p) => {
        const { value, location, overlooked, strays } = computeGospa(a, b, toOptions(p));
        expect(location + overlooked + strays).toBeCloseTo(value ** p, 8);
        const share = computeGospaShare(a, b, toOptions(p));
        expect(share).toBeGreaterThanOrEqual(-1e-12);
        expect(share).toBeLessThanOrEqual(1);
      }),
    );
  });

  it("stacked duplicates never lower it", () => {
    fc.assert(
      fc.property(points, fc.array(point, { minLength: 1, maxLength: 4 }), order, (a, b, p) => {
        const stacked = [...b, ...b.slice(0, 1)];
        const [once, twice] = [computeGospa(a, b, toOptions(p)), computeGospa(a, stacked, toOptions(p))];
        const isWanted = twice.pairs.length > once.pairs.length;
        if (!isWanted) expect(twice.value).toBeGreaterThanOrEqual(once.value - 1e-12);
      }),
    );
  });

  it("of order infinity, OSPA is the limit of high orders", () => {
    fc.assert(
      fc.property(points, points, (a, b) => {
        const limit = computeOspa(a, b, { ...toOptions(1), order: Number.POSITIVE_INFINITY });
        expect(computeOspa(a, b, { ...toOptions(1), order: 200 })).toBeGreaterThan(limit * 0.98 - 1e-9);
        expect(computeOspa(a, b, { ...toOptions(1), order: 200 })).toBeLessThanOrEqual(limit + 1e-9);
      }),
    );
  });
});
