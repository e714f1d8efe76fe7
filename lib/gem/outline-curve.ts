import type { Point } from "@/lib/gem/point";

/**
 * A girdle outline as a closed chain of conics in the crown view, run through CLOCKWISE. A place on it is a
 * number `u`: the whole part is the piece, the fraction the place within it. A straight side is a conic whose
 * middle point lies on it.
 */
export type OutlineCurve = readonly ConicPiece[];

/** A rational quadratic curve from `from` to `to` with tangents through `via`; weight 1 is a parabola. */
export interface ConicPiece {
  readonly from: Point;
  readonly via: Point;
  readonly to: Point;
  readonly weight: number;
}

/** Weight of a quarter of an ellipse. */
export const ELLIPSE_WEIGHT = Math.SQRT1_2;

/**
 * The weight of a conic from its fullness: the share (0 to 1) of the way from the middle of the chord to `via`
 * that the curve reaches. An ellipse has 0.4142, a parabola 0.5.
 */
export function toConicWeight(fullness: number): number {
  return fullness / (1 - fullness);
}

function getPiece(curve: OutlineCurve, u: number): { piece: ConicPiece; t: number } {
  const count = curve.length;
  const wrapped = u === count ? u : ((u % count) + count) % count;
  const index = Math.min(Math.floor(wrapped), count - 1); // the end of an open chain belongs to its last piece
  const piece = curve[index];
  if (piece === undefined) throw new RangeError("getPiece: an outline needs at least one piece");
  return { piece, t: wrapped - index };
}

/** The point at `u`. Throws RangeError for an outline without pieces. */
export function getCurvePoint(curve: OutlineCurve, u: number): Point {
  const { piece, t } = getPiece(curve, u);
  const a = (1 - t) * (1 - t);
  const b = 2 * piece.weight * t * (1 - t);
  const c = t * t;
  const sum = a + b + c;
  return [
    (a * piece.from[0] + b * piece.via[0] + c * piece.to[0]) / sum,
    (a * piece.from[1] + b * piece.via[1] + c * piece.to[1]) / sum,
  ];
}

/** The outward unit normal at `u`, of the piece that begins there at a joint. */
export function getCurveNormal(curve: OutlineCurve, u: number): Point {
  const { piece, t } = getPiece(curve, u);
  const { from, via, to, weight } = piece;
  // The tangent of a rational quadratic lies along w(1-t)^2 (via-from) + t(1-t)(to-from) + w t^2 (to-via).
  const a = weight * (1 - t) * (1 - t);
  const b = t * (1 - t);
  const c = weight * t * t;
  const dx = a * (via[0] - from[0]) + b * (to[0] - from[0]) + c * (to[0] - via[0]);
  const dy = a * (via[1] - from[1]) + b * (to[1] - from[1]) + c * (to[1] - via[1]);
  const length = Math.hypot(dx, dy);
  return [-dy / length, dx / length];
}

/**
 * Where the ray from `origin` along `direction` meets the curve between `from` and `to` (u, clockwise), by
 * bisection to the last digit. The two ends must lie on either side of the ray.
 */
export function findCurveCrossing(
  curve: OutlineCurve,
  ray: { readonly origin: Point; readonly direction: Point },
  from: number,
  to: number,
): number {
  const { origin, direction } = ray;
  const side = (u: number) => {
    const [x, y] = getCurvePoint(curve, u);
    return (x - origin[0]) * direction[1] - (y - origin[1]) * direction[0];
  };
  let low = from;
  let high = to;
  const sign = side(from) < 0 ? 1 : -1;
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    if (side(middle) * sign < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
