import { describe, expect, it } from "vitest";
import { computeAfroc, listAfrocPoints } from "@/lib/agreement/afroc";
import { type FreeResponseCase, listFreeResponsePoints } from "@/lib/agreement/free-response";

const marks = (...pairs: [number | null, number][]) =>
  pairs.map(([confidence, weight]) => ({ confidence, weight }));

/** Chakraborty's open FROC book: 4 normal and 5 diseased cases (check values 5.2). */
const CASES: readonly FreeResponseCase[] = [
  { strays: [], marks: [] },
  { strays: [0.5], marks: [] },
  { strays: [0.7, 0.6], marks: [] },
  { strays: [-0.3], marks: [] },
  { strays: [1.5], marks: marks([0.9, 1]) },
  { strays: [], marks: marks([-0.2, 1]) },
  { strays: [], marks: marks([1.6, 0.1], [null, 0.9]) },
  { strays: [], marks: marks([3, 0.9], [2, 0.1]) },
  { strays: [], marks: marks([1, 0.3], [2.5, 0.4], [1, 0.3]) },
];

describe("hand example of the open FROC book (check values 5.2)", () => {
  it("AFROC points (0,0) (0,.7778) (.5,.7778) (.5,.8889) (.75,.8889) (1,1)", () => {
    const points = listAfrocPoints(CASES, { weighted: false, rivals: "clean" });
    const corners = [
      [0, 0],
      [0, 0.7778],
      [0.5, 0.7778],
      [0.5, 0.8889],
      [0.75, 0.8889],
      [1, 1],
    ];
    for (const [strayShare, foundShare] of corners) {
      expect(points).toContainEqual({
        strayShare: expect.closeTo(strayShare ?? 0, 4),
        foundShare: expect.closeTo(foundShare ?? 0, 4),
      });
    }
  });

  it("AFROC 0.8472222", () => {
    const area = computeAfroc(CASES, { weighted: false, rivals: "clean" });
    expect(area).toMatchObject({ value: expect.closeTo(0.8472222, 7) });
  });

  it("wAFROC ordinates .62 and .82", () => {
    const heights = listAfrocPoints(CASES, { weighted: true, rivals: "clean" }).map(
      (point) => point.foundShare,
    );
    expect(heights).toContainEqual(expect.closeTo(0.62, 10));
    expect(heights).toContainEqual(expect.closeTo(0.82, 10));
  });

  it("wAFROC 0.7425", () => {
    const area = computeAfroc(CASES, { weighted: true, rivals: "clean" });
    expect(area).toMatchObject({ value: expect.closeTo(0.7425, 10) });
  });

  it("first steps of the weighted curve .18 .26 .28", () => {
    const points = listFreeResponsePoints(CASES).slice(0, 3);
    expect(points.map((point) => point.threshold)).toEqual([3, 2.5, 2]);
    expect(points.map((point) => point.foundWeight)).toEqual(
      [0.18, 0.26, 0.28].map((v) => expect.closeTo(v, 12)),
    );
  });

  it("ends at 8 of 9 found and 5 strays in 9 cases", () => {
    const last = listFreeResponsePoints(CASES).at(-1);
    expect(last).toEqual({
      threshold: -0.3,
      straysPerPlot: 5 / 9,
      foundShare: 8 / 9,
      foundWeight: expect.closeTo(0.82, 12),
    });
  });

  it("the area equals that under the points, by trapezoids", () => {
    for (const weighted of [false, true]) {
      for (const rivals of ["clean", "all"] as const) {
        const points = listAfrocPoints(CASES, { weighted, rivals });
        const area = points.slice(1).reduce((sum, point, i) => {
          const before = points[i] ?? { strayShare: 0, foundShare: 0 };
          return sum + ((point.strayShare - before.strayShare) * (point.foundShare + before.foundShare)) / 2;
        }, 0);
        expect(computeAfroc(CASES, { weighted, rivals })).toMatchObject({ value: expect.closeTo(area, 12) });
      }
    }
  });

  it("has a seeded interval that holds the value", () => {
    const area = computeAfroc(CASES, { weighted: true, rivals: "clean", seed: 3 });
    expect(computeAfroc(CASES, { weighted: true, rivals: "clean", seed: 3 })).toEqual(area);
    if ("undefined" in area) throw new Error(area.undefined);
    expect(area.low).toBeLessThanOrEqual(area.value);
    expect(area.high).toBeGreaterThanOrEqual(area.value);
    expect(area.low).toBeGreaterThanOrEqual(0);
    expect(area.high).toBeLessThanOrEqual(1);
  });
});

describe("edges", () => {
  const found: FreeResponseCase = { strays: [], marks: [{ confidence: 2 }] };

  it("is undefined without reference marks and without clean readings", () => {
    const clean: FreeResponseCase = { strays: [1], marks: [] };
    expect(computeAfroc([clean], { weighted: false, rivals: "clean" })).toHaveProperty("undefined");
    expect(computeAfroc([found], { weighted: false, rivals: "clean" })).toHaveProperty("undefined");
    expect(computeAfroc([found], { weighted: false, rivals: "all" })).toEqual({ value: 1, low: 0, high: 1 });
    expect(computeAfroc([], { weighted: true, rivals: "all" })).toHaveProperty("undefined");
    expect(listAfrocPoints([], { weighted: true, rivals: "all" })).toEqual([]);
  });

  it("nothing marked anywhere is a coin toss", () => {
    const blank: FreeResponseCase = { strays: [], marks: [{ confidence: null }] };
    expect(
      computeAfroc([blank, { strays: [], marks: [] }], { weighted: false, rivals: "clean" }),
    ).toMatchObject({
      value: 0.5,
    });
  });

  it("no case gives no point; no reference mark gives shares of 0", () => {
    expect(listFreeResponsePoints([])).toEqual([]);
    expect(listFreeResponsePoints([{ strays: [4], marks: [] }])).toEqual([
      { threshold: 4, straysPerPlot: 1, foundShare: 0, foundWeight: 0 },
    ]);
  });
});
