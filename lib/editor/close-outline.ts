/** From a line drawn around something to an outline that encloses it (SPEC.md 4). */
import { getLineLength, getPolygonArea } from "@/lib/editor/measure-shape";
import { thinLine } from "@/lib/editor/thin-line";
import type { Point } from "@/lib/gem/point";
import { findSelfCrossing } from "@/lib/plot/shape";

/** A loop that holds less of the drawn line than this is not what was meant. */
const LOOP_SHARE = 0.7;
/** Less area than this encloses nothing: a square of a thousandth of the girdle width. */
const LEAST_AREA = 1e-6;
const FINER_TRIES = 4;

export type ClosedOutline =
  | { readonly ok: true; readonly points: readonly Point[] }
  | { readonly ok: false; readonly why: "crosses" | "flat" };

const toMutable = (points: readonly Point[]) => points.map(([x, y]): [number, number] => [x, y]);

/** True when the closed polygon's edges properly cross one another. */
export function isSelfCrossing(points: readonly Point[]): boolean {
  return findSelfCrossing(toMutable(points)) !== null;
}

/** Where the segments ab and cd properly cross, or null. */
function findCrossing(a: Point, b: Point, c: Point, d: Point): Point | null {
  const rx = b[0] - a[0];
  const ry = b[1] - a[1];
  const sx = d[0] - c[0];
  const sy = d[1] - c[1];
  const turn = rx * sy - ry * sx;
  if (turn === 0) return null;
  const t = ((c[0] - a[0]) * sy - (c[1] - a[1]) * sx) / turn;
  const u = ((c[0] - a[0]) * ry - (c[1] - a[1]) * rx) / turn;
  return t > 0 && t < 1 && u > 0 && u < 1 ? [a[0] + t * rx, a[1] + t * ry] : null;
}

/** The longest loop that the open line makes by crossing itself, or null. */
function findLongestLoop(line: readonly Point[]): readonly Point[] | null {
  let longest: readonly Point[] | null = null;
  let length = 0;
  for (let i = 0; i + 1 < line.length; i += 1) {
    for (let j = i + 2; j + 1 < line.length; j += 1) {
      const at = findCrossing(line[i] as Point, line[i + 1] as Point, line[j] as Point, line[j + 1] as Point);
      if (at === null) continue;
      const loop = [at, ...line.slice(i + 1, j + 1)];
      const loopLength = getLineLength(loop);
      if (loopLength > length) {
        longest = loop;
        length = loopLength;
      }
    }
  }
  return longest;
}

/**
 * Closes a freehand line. Ends that overshoot where the line meets itself are cut off; a line that crosses itself
 * otherwise, or encloses nothing, is refused. `tolerance` is the thinning's, in girdle widths.
 */
export function closeOutline(line: readonly Point[], tolerance: number): ClosedOutline {
  const fine = thinLine(line, tolerance / 4);
  const loop = findLongestLoop(fine);
  const isOvershoot = loop !== null && getLineLength(loop) >= LOOP_SHARE * getLineLength(fine);
  const ring = isOvershoot && loop !== null ? loop : fine;
  const checked = checkOutline(ring);
  if (!checked.ok) return checked;
  for (let i = 0, limit = tolerance; i < FINER_TRIES; i += 1, limit /= 2) {
    const points = thinLine(ring, limit);
    if (points.length >= 3 && !isSelfCrossing(points)) return { ok: true, points };
  }
  return { ok: true, points: ring };
}

/** Checks an outline whose corners were set one by one. */
export function checkOutline(points: readonly Point[]): ClosedOutline {
  if (isSelfCrossing(points)) return { ok: false, why: "crosses" };
  const isFlat = points.length < 3 || getPolygonArea(points) < LEAST_AREA;
  return isFlat ? { ok: false, why: "flat" } : { ok: true, points };
}
