/** Sections of beams: convex polygons across the direction of the light. */
import type { Point } from "@/lib/gem/point";

/** Least u, most u, least v, most v. */
export type Box = readonly [left: number, right: number, low: number, high: number];

/** Area of a section, positive when it runs counter-clockwise; 0 for fewer than three corners. */
export function getSectionArea(section: readonly Point[]): number {
  let doubled = 0;
  let previous = section[section.length - 1];
  for (const corner of section) {
    if (previous !== undefined) doubled += previous[0] * corner[1] - previous[1] * corner[0];
    previous = corner;
  }
  return doubled / 2;
}

/** The box round a section; infinite the wrong way round for none. */
export function getSectionBox(section: readonly Point[]): Box {
  let left = Number.POSITIVE_INFINITY;
  let right = Number.NEGATIVE_INFINITY;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < section.length; i += 1) {
    const [x, y] = section[i] as Point;
    if (x < left) left = x;
    if (x > right) right = x;
    if (y < low) low = y;
    if (y > high) high = y;
  }
  return [left, right, low, high];
}

/**
 * The common part of a section and a face seen along the leg, both counter-clockwise (Sutherland and Hodgman
 * 1974). `cast` holds the vertices along the leg as [u0, v0, u1, v1, …], `ring` the face's. Empty when they do not
 * overlap. Indexed loops: this is where the time goes.
 */
export function intersectSection(
  subject: readonly Point[],
  ring: readonly number[],
  cast: Float64Array,
): readonly Point[] {
  let out = subject;
  const count = ring.length;
  for (let i = 0; i < count; i += 1) {
    const a = 2 * (ring[i] as number);
    const b = 2 * (ring[i + 1 === count ? 0 : i + 1] as number);
    const ax = cast[a] as number;
    const ay = cast[a + 1] as number;
    const ex = (cast[b] as number) - ax;
    const ey = (cast[b + 1] as number) - ay;
    out = clipAtLine(out, ax, ay, ex, ey);
    if (out.length < 3) return NOTHING;
  }
  return out;
}

const NOTHING: readonly Point[] = [];

/** The part of a convex polygon on the left of a line from (ax, ay) along (ex, ey); itself when that is all. */
function clipAtLine(
  polygon: readonly Point[],
  ax: number,
  ay: number,
  ex: number,
  ey: number,
): readonly Point[] {
  const count = polygon.length;
  let kept: Point[] | null = null;
  for (let i = 0; i < count && kept === null; i += 1) {
    const corner = polygon[i] as Point;
    if (ex * (corner[1] - ay) - ey * (corner[0] - ax) < 0) kept = [];
  }
  if (kept === null) return polygon;
  let from = polygon[count - 1] as Point;
  let before = ex * (from[1] - ay) - ey * (from[0] - ax);
  for (let i = 0; i < count; i += 1) {
    const to = polygon[i] as Point;
    const after = ex * (to[1] - ay) - ey * (to[0] - ax);
    if (before >= 0 !== after >= 0) {
      const t = before / (before - after);
      kept.push([from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t]);
    }
    if (after >= 0) kept.push(to);
    from = to;
    before = after;
  }
  return kept;
}

/** True when a face, seen along the leg, lies wholly on one side of the leg's box. */
export function isBesideBox(ring: readonly number[], cast: Float64Array, box: Box): boolean {
  let [isLeft, isRight, isBelow, isAbove] = [true, true, true, true];
  for (let i = 0; i < ring.length; i += 1) {
    const at = 2 * (ring[i] as number);
    const a = cast[at] as number;
    const b = cast[at + 1] as number;
    if (a > box[0]) isLeft = false;
    if (a < box[1]) isRight = false;
    if (b > box[2]) isBelow = false;
    if (b < box[3]) isAbove = false;
  }
  return isLeft || isRight || isBelow || isAbove;
}
