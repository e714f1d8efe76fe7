/** What was drawn: a dot, a stroke or an outline, in a view's own frame, in girdle widths (design.md). */
import { z } from "zod";

/** Beyond this no coordinate can lie on a stone: the longest cut is far under ten girdle widths across. */
const COORDINATE_LIMIT = 10;
const coordinate = z.number().min(-COORDINATE_LIMIT).max(COORDINATE_LIMIT);

/** `[x, y]`: x to the right, y up as the view is seen, origin at the centre of the girdle outline. */
export const PointSchema = z.tuple([coordinate, coordinate]);

/** A shape may hold this many points; a pen stroke is thinned far below it before it is kept. */
export const MAX_SHAPE_POINTS = 400;

const DotSchema = z.strictObject({ kind: z.literal("dot"), at: PointSchema });
const StrokeSchema = z.strictObject({
  kind: z.literal("stroke"),
  points: z.array(PointSchema).min(2, "a stroke needs two points or more").max(MAX_SHAPE_POINTS),
});
const OutlineSchema = z
  .strictObject({
    kind: z.literal("outline"),
    points: z.array(PointSchema).min(3, "an outline needs three points or more").max(MAX_SHAPE_POINTS),
  })
  .superRefine((outline, context) => {
    const crossing = findSelfCrossing(outline.points);
    if (crossing !== null) {
      context.addIssue({
        code: "custom",
        path: ["points", crossing],
        message: "the outline crosses itself at the edge that starts here",
      });
    }
  });

export const ShapeSchema = z.discriminatedUnion("kind", [DotSchema, StrokeSchema, OutlineSchema]);
export type Shape = z.infer<typeof ShapeSchema>;
type Point = z.infer<typeof PointSchema>;

/** All vertices of a shape in drawing order; one for a dot. */
export function listVertices(shape: Shape): readonly Point[] {
  return shape.kind === "dot" ? [shape.at] : shape.points;
}

/** A copy of the shape with every vertex mapped. */
export function mapVertices(shape: Shape, map: (point: Point) => readonly [number, number]): Shape {
  const to = (point: Point): Point => {
    const [x, y] = map(point);
    return [x, y];
  };
  return shape.kind === "dot"
    ? { kind: "dot", at: to(shape.at) }
    : { ...shape, points: shape.points.map(to) };
}

const cross = (o: Point, a: Point, b: Point) => (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0]);

/** Two segments cross properly: each has the other's ends strictly on different sides. Touching is allowed. */
function doCross(a: Point, b: Point, c: Point, d: Point): boolean {
  const abc = cross(a, b, c);
  const abd = cross(a, b, d);
  const cda = cross(c, d, a);
  const cdb = cross(c, d, b);
  return abc * abd < 0 && cda * cdb < 0;
}

/**
 * The index of the first vertex whose outgoing edge properly crosses another edge of the closed outline, or null.
 * Edges that only touch, repeated points and flat outlines are no crossing.
 */
export function findSelfCrossing(points: readonly Point[]): number | null {
  const count = points.length;
  for (let i = 0; i < count; i += 1) {
    const a = points[i] as Point;
    const b = points[(i + 1) % count] as Point;
    for (let j = i + 2; j < count; j += 1) {
      if (i === 0 && j === count - 1) continue;
      if (doCross(a, b, points[j] as Point, points[(j + 1) % count] as Point)) return i;
    }
  }
  return null;
}
