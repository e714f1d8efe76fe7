import { expect, it } from "vitest";
import { traceTolerance } from "@/components/debrief/trace-tolerance";
import { getDistanceToLine } from "@/lib/editor/measure-shape";
import type { Shape } from "@/lib/plot/shape";

it("is a circle round a dot", () => {
  for (const [x, y] of traceTolerance({ kind: "dot", at: [0.2, -0.1] }, 0.1)) {
    expect(Math.hypot(x - 0.2, y + 0.1)).toBeCloseTo(0.1, 5);
  }
});

const SHAPES: readonly Shape[] = [
  {
    kind: "stroke",
    points: [
      [-0.1, 0],
      [0, 0.05],
      [0.2, 0],
    ],
  },
  {
    kind: "stroke",
    points: [
      [-0.2, 0.2],
      [-0.2, -0.2],
      [0.2, -0.2],
      [0.2, 0.2],
    ],
  },
  {
    kind: "outline",
    points: [
      [0, 0],
      [0.1, 0],
      [0.1, 0.08],
      [0, 0.1],
    ],
  },
];

it.each(SHAPES)("keeps the distance to $kind all the way round", (shape) => {
  const line = traceTolerance(shape, 0.03);
  expect(line.length).toBeGreaterThan(30);
  for (const point of line) expect(getDistanceToLine(shape, point)).toBeCloseTo(0.03, 4);
});
