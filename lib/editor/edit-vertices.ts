/** Changing a shape vertex by vertex. Each gives a new shape, or null where the shape cannot take the change. */
import { checkOutline } from "@/lib/editor/close-outline";
import { toShape } from "@/lib/editor/drawn-mark";
import { listEdges } from "@/lib/editor/measure-shape";
import type { Point } from "@/lib/gem/point";
import { listVertices, MAX_SHAPE_POINTS, type Shape } from "@/lib/plot/shape";

const LEAST = { dot: 1, stroke: 2, outline: 3 } as const;

/** Null for an outline that crosses itself or encloses nothing. */
function accept(kind: Shape["kind"], points: readonly Point[]): Shape | null {
  if (kind === "outline" && !checkOutline(points).ok) return null;
  return toShape(kind, points);
}

/** The shape with one vertex elsewhere; null when there is no such vertex or the outline would cross itself. */
export function moveVertex(shape: Shape, vertex: number, to: Point): Shape | null {
  const points = listVertices(shape);
  if (points[vertex] === undefined) return null;
  return accept(
    shape.kind,
    points.map((point, i) => (i === vertex ? to : point)),
  );
}

/** The shape with one more vertex on the edge that starts at `edge`; null for a dot, a full shape, no such edge. */
export function insertVertex(shape: Shape, edge: number, at?: Point): Shape | null {
  const points = listVertices(shape);
  const ends = listEdges(shape)[edge];
  if (ends === undefined || points.length >= MAX_SHAPE_POINTS) return null;
  const [from, to] = [points[ends[0]] as Point, points[ends[1]] as Point];
  const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  return accept(shape.kind, [...points.slice(0, edge + 1), at ?? middle, ...points.slice(edge + 1)]);
}

/** The shape without one vertex; null when it has none to spare or the outline would cross itself. */
export function deleteVertex(shape: Shape, vertex: number): Shape | null {
  const points = listVertices(shape);
  if (points[vertex] === undefined || points.length <= LEAST[shape.kind]) return null;
  return accept(
    shape.kind,
    points.filter((_, i) => i !== vertex),
  );
}
