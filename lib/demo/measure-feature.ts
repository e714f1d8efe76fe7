import type { Point } from "@/lib/gem/point";
import { listVertices, type Shape } from "@/lib/plot/shape";

/** Nothing is seen as smaller than this (girdle widths). */
const SMALLEST_SIZE = 0.012;

/** The mean of a shape's vertices, in its view's frame. */
export function getFeatureCentre(shape: Shape): Point {
  const vertices = listVertices(shape);
  const sum = vertices.reduce<Point>((total, [x, y]) => [total[0] + x, total[1] + y], [0, 0]);
  return [sum[0] / vertices.length, sum[1] / vertices.length];
}

/** The longest distance between two vertices, at least 0.012 girdle widths: how large a thing looks. */
export function getFeatureSize(shape: Shape): number {
  const vertices = listVertices(shape);
  let size = SMALLEST_SIZE;
  for (const [ax, ay] of vertices)
    for (const [bx, by] of vertices) size = Math.max(size, Math.hypot(ax - bx, ay - by));
  return size;
}
