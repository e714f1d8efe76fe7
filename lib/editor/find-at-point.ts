/** What lies under the pointer. `reach`: how far off still counts, girdle widths. */
import type { DrawnMark } from "@/lib/editor/drawn-mark";
import { getDistance, getDistanceToLine, getPolygonArea, listEdges } from "@/lib/editor/measure-shape";
import { isInsidePolygon } from "@/lib/gem/is-inside-outline";
import type { Point, View } from "@/lib/gem/point";
import { listVertices, type Shape } from "@/lib/plot/shape";

/**
 * The mark at a point of a view, or null: the one whose dot or line is nearest within reach, else the smallest
 * outline that the point lies in. Of equals the one drawn last.
 */
export function findMarkAt<M extends DrawnMark>(
  marks: readonly M[],
  view: View,
  point: Point,
  reach: number,
): M | null {
  let onLine: M | null = null;
  let nearest = reach;
  let around: M | null = null;
  let smallest = Number.POSITIVE_INFINITY;
  for (const mark of marks) {
    if (mark.view !== view) continue;
    const off = getDistanceToLine(mark.shape, point);
    if (off <= nearest) {
      nearest = off;
      onLine = mark;
    } else if (mark.shape.kind === "outline" && isInsidePolygon(mark.shape.points, point)) {
      const area = getPolygonArea(mark.shape.points);
      if (area <= smallest) {
        smallest = area;
        around = mark;
      }
    }
  }
  return onLine ?? around;
}

/** A vertex, or the middle of the edge that starts at a vertex, where one more can be put in. */
export interface ShapeHandle {
  readonly kind: "vertex" | "edge";
  readonly index: number;
  readonly at: Point;
}

/** An edge shorter than this many reaches has no handle of its own: it would lie on those of its ends. */
const EDGE_REACHES = 4;

/** The handles of a shape at a given reach; none for a dot. Vertices first. */
export function listHandles(shape: Shape, reach: number): ShapeHandle[] {
  if (shape.kind === "dot") return [];
  const points: readonly Point[] = listVertices(shape);
  const vertices = points.map((at, index): ShapeHandle => ({ kind: "vertex", index, at }));
  const edges = listEdges(shape).flatMap(([from, to], index): ShapeHandle[] => {
    const [a, b] = [points[from] as Point, points[to] as Point];
    if (getDistance(a, b) < EDGE_REACHES * reach) return [];
    return [{ kind: "edge", index, at: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] }];
  });
  return [...vertices, ...edges];
}

/** The nearest handle within reach, or null. */
export function findHandleAt(shape: Shape, point: Point, reach: number): ShapeHandle | null {
  let found: ShapeHandle | null = null;
  let nearest = reach;
  for (const handle of listHandles(shape, reach)) {
    const off = getDistance(handle.at, point);
    if (off < nearest || (found === null && off === nearest)) {
      nearest = off;
      found = handle;
    }
  }
  return found;
}
