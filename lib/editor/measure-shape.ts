/** Plane geometry of drawn shapes that the editor needs. Points in a view's frame, girdle widths. */
import type { Point } from "@/lib/gem/point";
import { listVertices, type Shape } from "@/lib/plot/shape";

/** Distance between two points. */
export function getDistance(a: Point, b: Point): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}

/** The point of segment ab nearest to p. */
export function findNearestOnSegment(p: Point, a: Point, b: Point): Point {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const square = dx * dx + dy * dy;
  if (square === 0) return a;
  const t = Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / square));
  return [a[0] + t * dx, a[1] + t * dy];
}

/** The edges of a shape as index pairs: none for a dot, an outline closed. */
export function listEdges(shape: Shape): readonly (readonly [from: number, to: number])[] {
  if (shape.kind === "dot") return [];
  const edges = shape.points.slice(1).map((_, i) => [i, i + 1] as const);
  return shape.kind === "outline" ? [...edges, [shape.points.length - 1, 0] as const] : edges;
}

/** Distance from p to the dot, the stroke or the line of the outline itself (not its inside). */
export function getDistanceToLine(shape: Shape, p: Point): number {
  if (shape.kind === "dot") return getDistance(p, shape.at);
  const points: readonly Point[] = shape.points;
  let least = Number.POSITIVE_INFINITY;
  for (const [from, to] of listEdges(shape)) {
    least = Math.min(
      least,
      getDistance(p, findNearestOnSegment(p, points[from] as Point, points[to] as Point)),
    );
  }
  return least;
}

/** Length of an open line through the points; 0 for fewer than two. */
export function getLineLength(points: readonly Point[]): number {
  let length = 0;
  for (let i = 1; i < points.length; i += 1) {
    length += getDistance(points[i - 1] as Point, points[i] as Point);
  }
  return length;
}

/** Area enclosed by the polygon, never negative. */
export function getPolygonArea(polygon: readonly Point[]): number {
  let twice = 0;
  polygon.forEach((a, i) => {
    const b = polygon[(i + 1) % polygon.length] as Point;
    twice += a[0] * b[1] - b[0] * a[1];
  });
  return Math.abs(twice) / 2;
}

/** The middle of the box that holds the shape: where its words and its callout say that it is. */
export function getMiddle(shape: Shape): Point {
  const vertices = listVertices(shape);
  const xs = vertices.map(([x]) => x);
  const ys = vertices.map(([, y]) => y);
  return [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
}
