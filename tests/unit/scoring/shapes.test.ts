import { describe, expect, it } from "vitest";
import { createSeededRandom } from "@/lib/base/seeded-random";
import type { Shape } from "@/lib/plot/shape";
import { measureShape } from "@/lib/scoring/mark-geometry";
import { boundDistance, measureDistance, measureNearness } from "@/lib/scoring/measure-distance";
import {
  findSmallestByTrial,
  getSegmentDistance,
  isInsideByWinding,
  walkPath,
  type Xy,
} from "@/tests/support/scoring/brute-force";
import { makeShape } from "@/tests/support/scoring/make-case";

const dot = (x: number, y: number): Shape => ({ kind: "dot", at: [x, y] });
const stroke = (...points: [number, number][]): Shape => ({ kind: "stroke", points });
const square = (half: number): Shape => ({
  kind: "outline",
  points: [
    [-half, -half],
    [half, -half],
    [half, half],
    [-half, half],
  ],
});
const distance = (a: Shape, b: Shape) => measureDistance(measureShape(a), measureShape(b));

describe("samples (rule 1.1)", () => {
  it("takes 24 points evenly along a stroke, both ends included", () => {
    const { samples } = measureShape(stroke([0, 0], [0.1, 0], [0.1, 0.13]));
    expect(samples.length).toBe(48);
    expect(Array.from(samples.slice(0, 4))).toEqual([0, 0, expect.closeTo(0.01, 12), 0]);
    expect(Array.from(samples.slice(-2))).toEqual([0.1, 0.13]);
  });

  it("takes 24 points evenly round an outline from its first vertex, the first not twice", () => {
    const { samples } = measureShape(square(0.06));
    // The side is 0.12, the way round 0.48, the step 0.02.
    expect(Array.from(samples.slice(0, 4))).toEqual([-0.06, -0.06, expect.closeTo(-0.04, 12), -0.06]);
    expect(Array.from(samples.slice(-2))).toEqual([-0.06, expect.closeTo(-0.04, 12)]);
  });

  it("takes strokes and outlines of no length at their one place (rule 1.6)", () => {
    for (const shape of [
      stroke([0.1, 0.2], [0.1, 0.2]),
      {
        kind: "outline",
        points: [
          [0.1, 0.2],
          [0.1, 0.2],
          [0.1, 0.2],
        ],
      } as Shape,
    ]) {
      const { samples, extent, reach } = measureShape(shape);
      expect(new Set(samples)).toEqual(new Set([0.1, 0.2]));
      expect([extent, reach]).toEqual([0.015, expect.closeTo(0, 12)]);
      expect(distance(shape, dot(0.1, 0.2))).toBe(0);
    }
  });

  it("agrees with a walk along random paths", () => {
    const random = createSeededRandom("walks");
    for (let i = 0; i < 200; i += 1) {
      const shape = makeShape(random, [0.1, -0.1]);
      if (shape.kind === "dot") continue;
      const path: Xy[] = shape.kind === "stroke" ? shape.points : [...shape.points, shape.points[0] as Xy];
      const { samples } = measureShape(shape);
      for (let k = 0; k < 24; k += 1) {
        const [x, y] = walkPath(path, shape.kind === "stroke" ? k / 23 : k / 24);
        expect(samples[2 * k]).toBeCloseTo(x, 9);
        expect(samples[2 * k + 1]).toBeCloseTo(y, 9);
      }
    }
  });
});

describe("distance (rules 1.2, 1.3)", () => {
  it("is the plain distance of two dots, and 0 of a shape and itself", () => {
    expect(distance(dot(0, 0), dot(0.03, 0.04))).toBeCloseTo(0.05, 12);
    for (const shape of [dot(0.1, 0.2), square(0.1), stroke([0, 0], [0.1, 0.1], [0.3, 0])]) {
      expect(distance(shape, shape)).toBeCloseTo(0, 12);
    }
  });

  it("of a dot beside a stroke is half the distance and half the mean over the stroke", () => {
    // The dot lies 0.03 from the middle of a stroke of 0.08: samples at x = -0.04 + 0.08 k / 23.
    const mean =
      Array.from({ length: 24 }, (_, k) => Math.hypot(-0.04 + (0.08 * k) / 23, 0.03)).reduce(
        (a, b) => a + b,
      ) / 24;
    expect(distance(stroke([-0.04, 0], [0.04, 0]), dot(0, 0.03))).toBeCloseTo((0.03 + mean) / 2, 12);
  });

  it("of a dot inside an outline is half the mean way out to the dot", () => {
    const { samples } = measureShape(square(0.05));
    let sum = 0;
    for (let k = 0; k < 24; k += 1)
      sum += Math.hypot((samples[2 * k] as number) - 0.01, samples[2 * k + 1] as number);
    const mean = sum / 24;
    expect(distance(square(0.05), dot(0.01, 0))).toBeCloseTo(mean / 2, 12);
  });

  it("of two parallel strokes of one length is their gap", () => {
    expect(distance(stroke([0, 0], [0.2, 0]), stroke([0, 0.05], [0.2, 0.05]))).toBeCloseTo(0.05, 12);
  });

  it("agrees with an independent reckoning on random shapes, and its bound is never above it", () => {
    const random = createSeededRandom("distances");
    const toSegments = (shape: Shape): [Xy, Xy][] => {
      if (shape.kind === "dot") return [[shape.at, shape.at]];
      const ring = shape.kind === "outline" ? [...shape.points, shape.points[0] as Xy] : shape.points;
      return ring.slice(1).map((to, i) => [ring[i] as Xy, to]);
    };
    const toShape = (point: Xy, shape: Shape) =>
      shape.kind === "outline" && isInsideByWinding(point, shape.points)
        ? 0
        : Math.min(...toSegments(shape).map(([a, b]) => getSegmentDistance(point, a, b)));
    const oneSided = (from: Shape, to: Shape) => {
      const { samples } = measureShape(from);
      const points = Array.from(
        { length: samples.length / 2 },
        (_, k): Xy => [samples[2 * k] as number, samples[2 * k + 1] as number],
      );
      return points.reduce((sum, point) => sum + toShape(point, to), 0) / points.length;
    };
    for (let i = 0; i < 60; i += 1) {
      const place = (): [number, number] => [0.1 * random.normal(), 0.1 * random.normal()];
      const [a, b] = [makeShape(random, place()), makeShape(random, place())];
      const expected = (oneSided(a, b) + oneSided(b, a)) / 2;
      expect(distance(a, b)).toBeCloseTo(expected, 9);
      expect(distance(b, a)).toBeCloseTo(expected, 9);
      const [ga, gb] = [measureShape(a), measureShape(b)];
      expect(boundDistance(ga, gb)).toBeLessThanOrEqual(expected + 1e-12);
      expect(measureNearness(ga, gb)).toBeCloseTo(Math.min(expected, oneSided(b, a)), 9);
    }
  });
});

describe("extent (rule 1.4)", () => {
  it("is known for shapes with a closed form", () => {
    expect(measureShape(dot(0, 0)).extent).toBe(0.015);
    expect(measureShape(stroke([0, 0], [0.3, 0.4])).extent).toBeCloseTo(0.5, 12);
    expect(measureShape(square(0.1)).extent).toBeCloseTo(0.2 * Math.SQRT2, 12);
    // An equilateral triangle of side 0.3: the circle round it has the radius 0.3 / sqrt 3.
    const triangle: Shape = {
      kind: "outline",
      points: [
        [0, 0],
        [0.3, 0],
        [0.15, 0.15 * Math.sqrt(3)],
      ],
    };
    expect(measureShape(triangle).extent).toBeCloseTo((2 * 0.3) / Math.sqrt(3), 12);
    // An obtuse triangle: the circle on its longest side.
    expect(measureShape(stroke([0, 0], [0.2, 0.01], [0.4, 0])).extent).toBeCloseTo(0.4, 12);
    expect(measureShape(stroke([0, 0], [0.001, 0])).extent).toBe(0.015);
  });

  it("agrees with a trial of all pairs and triples on random points", () => {
    const random = createSeededRandom("circles");
    for (let i = 0; i < 300; i += 1) {
      const points = Array.from({ length: 2 + random.int(9) }, (): [number, number] =>
        random.chance(0.3)
          ? [random.int(4) / 10, random.int(4) / 10]
          : [random.next() - 0.5, random.next() - 0.5],
      );
      const expected = Math.max(0.015, 2 * findSmallestByTrial(points));
      expect(measureShape({ kind: "stroke", points }).extent).toBeCloseTo(expected, 8);
    }
  });
});
