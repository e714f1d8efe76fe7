/** Fewer points for the same line: Ramer 1972, Douglas and Peucker 1973. */
import type { Point } from "@/lib/gem/point";
import { MAX_SHAPE_POINTS } from "@/lib/plot/shape";

/** Square of the distance from p to the segment ab. Allocates nothing: it is called for every point of a stroke. */
function getSquaredOffset(p: Point, a: Point, b: Point): number {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const square = dx * dx + dy * dy;
  const along = square === 0 ? 0 : ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / square;
  const t = Math.min(1, Math.max(0, along));
  const offX = p[0] - a[0] - t * dx;
  const offY = p[1] - a[1] - t * dy;
  return offX * offX + offY * offY;
}

/** The point between two that lies farthest from their segment, of equals the nearest to the middle; -1 for none. */
function findFarthest(points: readonly Point[], from: number, to: number, tolerance: number): number {
  const middle = (from + to) / 2;
  let farthest = -1;
  let most = tolerance * tolerance;
  for (let i = from + 1; i < to; i += 1) {
    const off = getSquaredOffset(points[i] as Point, points[from] as Point, points[to] as Point);
    if (off > most || (off === most && farthest >= 0 && Math.abs(i - middle) < Math.abs(farthest - middle))) {
      most = off;
      farthest = i;
    }
  }
  return farthest;
}

/** Which points stay, for one tolerance. Iterative, so that a long stroke cannot exhaust the stack. */
function markKept(points: readonly Point[], tolerance: number): boolean[] {
  const kept = points.map((_, i) => i === 0 || i === points.length - 1);
  const spans: [number, number][] = [[0, points.length - 1]];
  for (let span = spans.pop(); span !== undefined; span = spans.pop()) {
    const [from, to] = span;
    const farthest = findFarthest(points, from, to, tolerance);
    if (farthest < 0) continue;
    kept[farthest] = true;
    spans.push([from, farthest], [farthest, to]);
  }
  return kept;
}

/**
 * The line with as few of its own points as keep it within `tolerance` (girdle widths) of where it was. Both ends
 * stay. When more than `maxPoints` would remain the tolerance is doubled until they do not. Fewer than three points
 * come back as they are; `maxPoints` must be 2 or more.
 */
export function thinLine(
  points: readonly Point[],
  tolerance: number,
  maxPoints: number = MAX_SHAPE_POINTS,
): Point[] {
  if (points.length < 3) return [...points];
  for (let limit = Math.max(tolerance, 1e-9); ; limit *= 2) {
    const kept = markKept(points, limit);
    const thinned = points.filter((_, i) => kept[i]);
    if (thinned.length <= maxPoints) return thinned;
  }
}
