import { type Point, toCrownPoint, type View } from "@/lib/gem/point";
import type { Solid } from "@/lib/gem/solid";

/** A girdle outline in the crown view, or the stone that has it. */
export type OutlineSource = Pick<Solid, "outline"> | readonly Point[];

function getOutline(source: OutlineSource): readonly Point[] {
  return "outline" in source ? source.outline : source;
}

/** Even-odd test of a point against a closed polygon, which need not be convex. False for fewer than 3 points. */
export function isInsidePolygon(polygon: readonly Point[], [x, y]: Point): boolean {
  let inside = false;
  let previous = polygon[polygon.length - 1];
  for (const corner of polygon) {
    if (previous !== undefined && corner[1] > y !== previous[1] > y) {
      const crossing = corner[0] + ((y - corner[1]) / (previous[1] - corner[1])) * (previous[0] - corner[0]);
      if (x < crossing) inside = !inside;
    }
    previous = corner;
  }
  return inside;
}

/** Distance from a point to the nearest edge of a closed polygon; Infinity for an empty one. */
export function getPolygonDistance(polygon: readonly Point[], [x, y]: Point): number {
  let nearest = Number.POSITIVE_INFINITY;
  let previous = polygon[polygon.length - 1];
  for (const corner of polygon) {
    if (previous !== undefined) {
      const [ax, ay] = previous;
      const [dx, dy] = [corner[0] - ax, corner[1] - ay];
      const length2 = dx * dx + dy * dy;
      const t = length2 === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / length2));
      nearest = Math.min(nearest, Math.hypot(x - ax - t * dx, y - ay - t * dy));
    }
    previous = corner;
  }
  return nearest;
}

/**
 * True when a point of a view lies within the girdle outline, or no more than `tolerance` (girdle widths)
 * outside it. The outline is the smooth curve, so for a round it is the circle of radius 0.5. An empty outline
 * holds nothing.
 */
export function isInsideOutline(source: OutlineSource, view: View, point: Point, tolerance = 0.001): boolean {
  const outline = getOutline(source);
  const crownPoint = toCrownPoint(view, point);
  return isInsidePolygon(outline, crownPoint) || getPolygonDistance(outline, crownPoint) <= tolerance;
}

/**
 * How far out a point lies on the ray from the centre to the girdle: 0 at the centre, 1 at the girdle, more
 * outside. Where a ray meets the outline more than once, as it may in a deep cleft, the nearest crossing counts.
 * 0 for an empty outline.
 */
export function getRimShare(source: OutlineSource, view: View, point: Point): number {
  const outline = getOutline(source);
  const [x, y] = toCrownPoint(view, point);
  const radius = Math.hypot(x, y);
  if (radius === 0) return 0;
  const [dx, dy] = [x / radius, y / radius];
  let rim = Number.POSITIVE_INFINITY;
  let previous = outline[outline.length - 1];
  for (const corner of outline) {
    if (previous !== undefined) {
      const before = dx * previous[1] - dy * previous[0];
      const after = dx * corner[1] - dy * corner[0];
      if (before <= 0 !== after <= 0) {
        const t = before / (before - after);
        const along =
          dx * (previous[0] + t * (corner[0] - previous[0])) +
          dy * (previous[1] + t * (corner[1] - previous[1]));
        if (along > 0) rim = Math.min(rim, along);
      }
    }
    previous = corner;
  }
  return Number.isFinite(rim) ? radius / rim : 0;
}
