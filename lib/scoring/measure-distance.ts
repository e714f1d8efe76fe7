/** Distance between two shapes of one view, in girdle widths (SPEC 1.2, 1.3). */
import type { MarkGeometry } from "@/lib/scoring/mark-geometry";

/** A place this much beyond a shape's reach, in girdle widths, is asked of the shape itself. */
const SLACK = 1e-9;

/** Even-odd test against a closed polygon given as x, y, x, y …; a point on an edge may fall either way. */
export function isInsideVertices(vertices: Float64Array, x: number, y: number): boolean {
  let inside = false;
  let px = vertices[vertices.length - 2] as number;
  let py = vertices[vertices.length - 1] as number;
  for (let i = 0; i < vertices.length; i += 2) {
    const cx = vertices[i] as number;
    const cy = vertices[i + 1] as number;
    if (cy > y !== py > y && x < cx + ((y - cy) / (py - cy)) * (px - cx)) inside = !inside;
    px = cx;
    py = cy;
  }
  return inside;
}

/** Square of the distance from a point to the nearest place on a polyline, closed or open. */
function getPathDistance2(vertices: Float64Array, isClosed: boolean, x: number, y: number): number {
  let nearest = Number.POSITIVE_INFINITY;
  let ax = vertices[isClosed ? vertices.length - 2 : 0] as number;
  let ay = vertices[isClosed ? vertices.length - 1 : 1] as number;
  for (let i = isClosed ? 0 : 2; i < vertices.length; i += 2) {
    const bx = vertices[i] as number;
    const by = vertices[i + 1] as number;
    const ux = bx - ax;
    const uy = by - ay;
    const length2 = ux * ux + uy * uy;
    const along = (x - ax) * ux + (y - ay) * uy;
    // Most places lie beyond one end of an edge, and a division is slow.
    const t = along <= 0 ? 0 : along >= length2 ? 1 : along / length2;
    const dx = x - ax - t * ux;
    const dy = y - ay - t * uy;
    const distance2 = dx * dx + dy * dy;
    if (distance2 < nearest) nearest = distance2;
    ax = bx;
    ay = by;
  }
  return nearest;
}

/** Distance from a point to a shape: to the nearest point of the dot, stroke or outline itself; 0 inside an outline. */
export function getPointDistance(shape: MarkGeometry, x: number, y: number): number {
  const { kind, vertices } = shape;
  if (kind === "dot") {
    const dx = x - (vertices[0] as number);
    const dy = y - (vertices[1] as number);
    return Math.sqrt(dx * dx + dy * dy);
  }
  if (kind === "outline") {
    const [dx, dy, reach] = [x - shape.centreX, y - shape.centreY, shape.reach + SLACK];
    if (dx * dx + dy * dy <= reach * reach && isInsideVertices(vertices, x, y)) return 0;
  }
  return Math.sqrt(getPathDistance2(vertices, kind === "outline", x, y));
}

/** Mean distance of one shape's samples to another shape. */
export function measureOneSided(from: MarkGeometry, to: MarkGeometry): number {
  const { samples } = from;
  let sum = 0;
  for (let i = 0; i < samples.length; i += 2) {
    sum += getPointDistance(to, samples[i] as number, samples[i + 1] as number);
  }
  return sum / (samples.length / 2);
}

/** `d` of scoring.md 1: the mean of the two one-sided means. Symmetric, and 0 for a shape and itself. */
export function measureDistance(reference: MarkGeometry, plotted: MarkGeometry): number {
  return (measureOneSided(reference, plotted) + measureOneSided(plotted, reference)) / 2;
}

/**
 * No more than `measureDistance`, at the cost of one square root: a mean distance to a shape is at least the
 * distance from the mean to the shape's convex hull, and the hull lies within the shape's reach of its centre.
 */
export function boundDistance(reference: MarkGeometry, plotted: MarkGeometry): number {
  const dx = reference.centreX - plotted.centreX;
  const dy = reference.centreY - plotted.centreY;
  return Math.sqrt(dx * dx + dy * dy) - (reference.reach + plotted.reach) / 2;
}

/**
 * How far a plotted mark is from a place that may explain it (SPEC 5.0): `d`, or, where it is less, the mean
 * distance of the mark's own samples, so that a small mark that lies on a large feature lies near it.
 */
export function measureNearness(place: MarkGeometry, plotted: MarkGeometry): number {
  const own = measureOneSided(plotted, place);
  return Math.min(own, (own + measureOneSided(place, plotted)) / 2);
}
