import { describe, expect, it } from "vitest";
import { findClockDeg, toClockPlace, toClockText, toPoint } from "@/lib/editor/clock-place";
import { checkOutline, closeOutline } from "@/lib/editor/close-outline";
import { deleteVertex, insertVertex, moveVertex } from "@/lib/editor/edit-vertices";
import { findHandleAt, findMarkAt, listHandles } from "@/lib/editor/find-at-point";
import { clampInside, getOvershoot, moveShapeInside } from "@/lib/editor/keep-inside";
import { getDistanceToLine, getLineLength, getMiddle, getPolygonArea } from "@/lib/editor/measure-shape";
import { thinLine } from "@/lib/editor/thin-line";
import type { Point } from "@/lib/gem/point";
import type { PlottedMark } from "@/lib/plot/mark";
import type { Shape } from "@/lib/plot/shape";
import { createDot, ROUND_FRAME } from "@/tests/support/editor-harness";

const SQUARE: Shape = {
  kind: "outline",
  points: [
    [0, 0],
    [0.1, 0],
    [0.1, 0.1],
    [0, 0.1],
  ],
};

/** A circle drawn once round, and on for `turns` of it. */
const drawCircle = (turns: number, count = 60, radius = 0.1): Point[] =>
  Array.from({ length: count }, (_, i): Point => {
    const angle = (2 * Math.PI * turns * i) / (count - 1);
    // The pen drifts outward, so that the overshoot crosses the beginning as a hand's does.
    const r = radius * (1 + 0.04 * Math.sin(angle * 1.3));
    return [r * Math.cos(angle), r * Math.sin(angle)];
  });

describe("measures", () => {
  it("knows lengths, areas, middles and distances of a square", () => {
    expect(getPolygonArea(SQUARE.kind === "outline" ? SQUARE.points : [])).toBeCloseTo(0.01, 12);
    expect(getMiddle(SQUARE)).toEqual([0.05, 0.05]);
    expect(getDistanceToLine(SQUARE, [0.05, 0.05])).toBeCloseTo(0.05, 12);
    expect(getDistanceToLine(SQUARE, [0, 0.2])).toBeCloseTo(0.1, 12);
    expect(getLineLength([[0, 0]])).toBe(0);
    expect(getLineLength([])).toBe(0);
  });
});

describe("thinning (SPEC 4.1)", () => {
  it("keeps the corner of a right angle and nothing else", () => {
    const line: Point[] = [
      [0, 0],
      [0.05, 0.0001],
      [0.1, 0],
      [0.1, 0.05],
      [0.1, 0.1],
    ];
    expect(thinLine(line, 0.001)).toEqual([
      [0, 0],
      [0.1, 0],
      [0.1, 0.1],
    ]);
  });

  it("gives short lines back and holds to the most points allowed", () => {
    expect(thinLine([], 0.1)).toEqual([]);
    expect(thinLine([[0, 0]], 0.1)).toEqual([[0, 0]]);
    const zigzag = Array.from({ length: 2000 }, (_, i): Point => [i / 2000, i % 2 === 0 ? 0 : 0.1]);
    expect(thinLine(zigzag, 0.0001).length).toBeLessThanOrEqual(400);
    expect(thinLine(zigzag, 0.0001, 2)).toHaveLength(2);
  });
});

describe("closing an outline (SPEC 4.2, 4.3)", () => {
  it("cuts the overshoot off", () => {
    const closed = closeOutline(drawCircle(1.12), 0.001);
    expect(closed.ok).toBe(true);
    if (!closed.ok) return;
    expect(getPolygonArea(closed.points)).toBeCloseTo(Math.PI * 0.01, 2);
    expect(closed.points.length).toBeLessThan(60);
  });

  it("closes a gap", () => {
    expect(closeOutline(drawCircle(0.9), 0.001).ok).toBe(true);
  });

  it("refuses a figure of eight and a line there and back", () => {
    const eight = Array.from({ length: 80 }, (_, i): Point => {
      const t = (2 * Math.PI * i) / 80;
      return [0.1 * Math.sin(t), 0.05 * Math.sin(2 * t)];
    });
    expect(closeOutline(eight, 0.001)).toEqual({ ok: false, why: "crosses" });
    expect(
      closeOutline(
        [
          [0, 0],
          [0.1, 0],
          [0, 0],
        ],
        0.001,
      ),
    ).toEqual({ ok: false, why: "flat" });
    expect(closeOutline([], 0.001)).toEqual({ ok: false, why: "flat" });
  });

  it("names crossing before emptiness for corners set one by one", () => {
    expect(
      checkOutline([
        [0, 0],
        [0.1, 0.1],
        [0.1, 0],
        [0, 0.1],
      ]),
    ).toEqual({ ok: false, why: "crosses" });
  });
});

describe("vertices (SPEC 4.4, 4.5)", () => {
  it("moves, puts in and takes out", () => {
    expect(moveVertex(SQUARE, 2, [0.2, 0.2])).toMatchObject({ points: { 2: [0.2, 0.2], length: 4 } });
    expect(insertVertex(SQUARE, 3)).toMatchObject({ points: { 4: [0, 0.05], length: 5 } });
    expect(deleteVertex(SQUARE, 0)).toMatchObject({ points: { length: 3 } });
    expect(moveVertex({ kind: "dot", at: [0, 0] }, 0, [0.1, 0])).toEqual({ kind: "dot", at: [0.1, 0] });
  });

  it("refuses a crossing, a vertex too few and a vertex that is not there", () => {
    expect(moveVertex(SQUARE, 0, [0.2, 0.05])).toBeNull();
    expect(moveVertex(SQUARE, 9, [0, 0])).toBeNull();
    const stroke: Shape = {
      kind: "stroke",
      points: [
        [0, 0],
        [0.1, 0],
      ],
    };
    expect(deleteVertex(stroke, 0)).toBeNull();
    const triangle = deleteVertex(SQUARE, 0);
    expect(triangle === null ? null : deleteVertex(triangle, 0)).toBeNull();
    expect(insertVertex({ kind: "dot", at: [0, 0] }, 0)).toBeNull();
    expect(insertVertex(stroke, 1)).toBeNull();
  });
});

describe("what lies under the pointer", () => {
  const around: PlottedMark = { id: "around", view: "crown", characteristic: "cloud", shape: SQUARE };
  const dot = createDot("dot", [0.05, 0.05]);
  it("prefers the line that is near to the outline that is around", () => {
    expect(findMarkAt([dot, around], "crown", [0.052, 0.05], 0.01)?.id).toBe("dot");
    expect(findMarkAt([dot, around], "crown", [0.08, 0.08], 0.01)?.id).toBe("around");
    expect(findMarkAt([dot, around], "pavilion", [0.05, 0.05], 0.01)).toBeNull();
    expect(findMarkAt([dot, around], "crown", [0.3, 0.3], 0.01)).toBeNull();
    expect(findMarkAt([], "crown", [0, 0], 1)).toBeNull();
  });

  it("finds vertices and, on edges long enough, places for one more", () => {
    expect(findHandleAt(SQUARE, [0.099, 0.001], 0.01)).toMatchObject({ kind: "vertex", index: 1 });
    expect(findHandleAt(SQUARE, [0.05, 0.001], 0.01)).toMatchObject({ kind: "edge", index: 0 });
    expect(listHandles(SQUARE, 0.05).every(({ kind }) => kind === "vertex")).toBe(true);
    expect(findHandleAt({ kind: "dot", at: [0, 0] }, [0, 0], 0.1)).toBeNull();
  });
});

describe("the girdle (SPEC 5)", () => {
  it("pulls a point to the circle of radius 0.5 and leaves one inside alone", () => {
    const [x, y] = clampInside(ROUND_FRAME, "crown", [0.6, 0.6]);
    expect(Math.hypot(x, y)).toBeCloseTo(0.5, 3);
    expect(x).toBeCloseTo(y, 9);
    expect(ROUND_FRAME.isInside("crown", [x, y])).toBe(true);
    expect(clampInside(ROUND_FRAME, "crown", [0.123456789, 0.2])).toEqual([0.12346, 0.2]);
    expect(getOvershoot(ROUND_FRAME, "crown", [0, 0.53])).toBeCloseTo(0.03, 3);
    expect(getOvershoot(ROUND_FRAME, "crown", [0, 0.4])).toBe(0);
  });

  it("moves a shape as far as it may", () => {
    const moved = moveShapeInside(ROUND_FRAME, "crown", SQUARE, 1, 0);
    if (moved.kind !== "outline") throw new Error("kind changed");
    const reach = Math.max(...moved.points.map(([x, y]) => Math.hypot(x, y)));
    expect(reach).toBeLessThanOrEqual(0.5 + 1e-6);
    expect(reach).toBeGreaterThan(0.499);
    expect(getPolygonArea(moved.points)).toBeCloseTo(0.01, 6);
  });
});

describe("clock places", () => {
  it("reads and writes a twelve-hour dial, half a degree to the minute", () => {
    expect(findClockDeg("3")).toBe(90);
    expect(findClockDeg("2:30")).toBe(75);
    expect(findClockDeg("12:00")).toBe(0);
    expect(findClockDeg("0:20")).toBe(10);
    for (const text of ["", "13", "2:60", "half past two", "-3", "2:5:1"])
      expect(findClockDeg(text)).toBeNull();
    expect(toClockText(75)).toBe("2:30");
    expect(toClockText(0)).toBe("12:00");
    expect(toClockText(359.9)).toBe("12:00");
    expect(toClockText(-90)).toBe("9:00");
  });

  it("lays 3 o'clock on the right of the crown and on the left of the pavilion, as the frame of reference says", () => {
    expect(toPoint(ROUND_FRAME, "crown", { clockDeg: 90, rimShare: 0.5 })[0]).toBeCloseTo(0.25, 6);
    expect(toPoint(ROUND_FRAME, "pavilion", { clockDeg: 90, rimShare: 0.5 })[0]).toBeCloseTo(-0.25, 6);
    expect(toClockPlace(ROUND_FRAME, "pavilion", [-0.25, 0])).toMatchObject({ clockDeg: 90 });
    expect(toClockPlace(ROUND_FRAME, "crown", [0, 0])).toEqual({ clockDeg: 0, rimShare: 0 });
  });
});
