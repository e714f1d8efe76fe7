import { isInsidePolygon } from "@/lib/gem/is-inside-outline";
import type { Point } from "@/lib/gem/point";
import type { Shape } from "@/lib/plot/shape";

function getSegmentDistance([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const length = (bx - ax) ** 2 + (by - ay) ** 2;
  const along = length === 0 ? 0 : ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / length;
  const t = Math.min(1, Math.max(0, along));
  return Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay));
}

/** How far a point lies from a shape of the same view, in girdle widths; 0 inside an outline (scoring.md 1). */
export function getShapeDistance(shape: Shape, point: Point): number {
  if (shape.kind === "dot") return Math.hypot(point[0] - shape.at[0], point[1] - shape.at[1]);
  const isClosed = shape.kind === "outline";
  if (isClosed && isInsidePolygon(shape.points, point)) return 0;
  const { points } = shape;
  return Math.min(
    ...points.map((from, i) => {
      const to = points[i + 1] ?? (isClosed ? points[0] : from);
      return getSegmentDistance(point, from, to ?? from);
    }),
  );
}
