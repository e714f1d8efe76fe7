/** Fewer points for the same line: Ramer 1972, Douglas and Peucker 1973. */
import { findNearestOnSegment, getDistance } from "@/lib/editor/measure-shape";
import type { Point } from "@/lib/gem/point";
import { MAX_SHAPE_POINTS } from "@/lib/plot/shape";

/** Indices that stay, for one tolerance. Iterative, so that a long stroke cannot exhaust the stack. */
function markKept(points: readonly Point[], tolerance: number): boolean[] {
  const kept = points.map((_, i) => i === 0 || i === points.length - 1);
  const spans: [number, number][] = [[0, points.length - 1]];
  for (let span = spans.pop(); span !== undefined; span = spans.pop()) {
    const [from, to] = span;
    let farthest = -1;
    let most = tolerance;
    for (let i = from + 1; i < to; i += 1) {
      const p = points[i] as Point;
      const off = getDistance(p, findNearestOnSegment(p, points[from] as Point, points[to] as Point));
      if (off > most) {
        most = off;
        farthest = i;
      }
    }
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
