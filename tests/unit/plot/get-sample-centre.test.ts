import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { getSampleCentre } from "@/lib/plot/get-sample-centre";
import type { Shape } from "@/lib/plot/shape";
import { measureShape } from "@/lib/scoring/mark-geometry";

const point = fc.tuple(
  fc.double({ min: -0.5, max: 0.5, noNaN: true }),
  fc.double({ min: -0.5, max: 0.5, noNaN: true }),
);
const shape: fc.Arbitrary<Shape> = fc.oneof(
  point.map((at): Shape => ({ kind: "dot", at })),
  fc.array(point, { minLength: 2, maxLength: 9 }).map((points): Shape => ({ kind: "stroke", points })),
  fc.array(point, { minLength: 3, maxLength: 9 }).map((points): Shape => ({ kind: "outline", points })),
);

describe("the centre of a shape's samples", () => {
  it("is the middle of a straight stroke and of a square", () => {
    expect(
      getSampleCentre({
        kind: "stroke",
        points: [
          [0, 0],
          [0.2, 0.1],
        ],
      }),
    ).toEqual([expect.closeTo(0.1, 12), expect.closeTo(0.05, 12)]);
    const square: Shape = {
      kind: "outline",
      points: [
        [0, 0],
        [0.12, 0],
        [0.12, 0.12],
        [0, 0.12],
      ],
    };
    expect(getSampleCentre(square)).toEqual([expect.closeTo(0.06, 12), expect.closeTo(0.06, 12)]);
  });

  it("is where the engine has it", () => {
    fc.assert(
      fc.property(shape, (one) => {
        const { centreX, centreY } = measureShape(one);
        const [x, y] = getSampleCentre(one);
        expect(Math.hypot(x - centreX, y - centreY)).toBeLessThan(1e-9);
      }),
    );
  });
});
