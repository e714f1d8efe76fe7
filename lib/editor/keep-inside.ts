/** Holding what is drawn inside the girdle (SPEC.md 5). */
import { getDistance } from "@/lib/editor/measure-shape";
import type { StoneFrame } from "@/lib/editor/stone-frame";
import type { Point, View } from "@/lib/gem/point";
import { listVertices, mapVertices, type Shape } from "@/lib/plot/shape";

/** Coordinates are kept to this many places: a hundred-thousandth of the girdle width, far below a hair. */
const PLACES = 1e5;
/** A point that was pulled to the girdle ends this share inside it, so that rounding cannot put it out again. */
const PULL = 1 - 1e-4;
const HALVINGS = 40;

/** The point rounded to the precision that is kept. Never -0. */
export function roundPoint(point: Point): Point {
  return [Math.round(point[0] * PLACES) / PLACES + 0, Math.round(point[1] * PLACES) / PLACES + 0];
}

/**
 * The point itself, rounded, when it lies inside the girdle; else the place where the line from the centre to it
 * meets the girdle.
 */
export function clampInside(frame: StoneFrame, view: View, point: Point): Point {
  const rounded = roundPoint(point);
  if (frame.isInside(view, rounded)) return rounded;
  let inside = 0;
  let outside = 1;
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = (inside + outside) / 2;
    if (frame.isInside(view, [point[0] * middle, point[1] * middle])) inside = middle;
    else outside = middle;
  }
  return roundPoint([point[0] * inside * PULL, point[1] * inside * PULL]);
}

/** How far outside the girdle a point lies, along the line to the centre; 0 inside. */
export function getOvershoot(frame: StoneFrame, view: View, point: Point): number {
  return frame.isInside(view, point) ? 0 : getDistance(point, clampInside(frame, view, point));
}

/** True when every vertex lies inside the girdle. */
export function isShapeInside(frame: StoneFrame, view: View, shape: Shape): boolean {
  return listVertices(shape).every((point) => frame.isInside(view, point));
}

/** The shape with each vertex that lies outside drawn to the girdle. */
export function clampShapeInside(frame: StoneFrame, view: View, shape: Shape): Shape {
  return mapVertices(shape, (point) => clampInside(frame, view, point));
}

/**
 * The shape moved by (dx, dy), or as far that way as keeps every vertex inside the girdle. A shape that does not
 * lie inside to begin with stays where it is.
 */
export function moveShapeInside(frame: StoneFrame, view: View, shape: Shape, dx: number, dy: number): Shape {
  const moveBy = (share: number) =>
    mapVertices(shape, ([x, y]) => roundPoint([x + dx * share, y + dy * share]));
  const whole = moveBy(1);
  if (isShapeInside(frame, view, whole)) return whole;
  let fits: Shape = shape;
  let low = 0;
  let high = 1;
  for (let i = 0; i < HALVINGS / 2; i += 1) {
    const middle = (low + high) / 2;
    const moved = moveBy(middle);
    if (isShapeInside(frame, view, moved)) {
      fits = moved;
      low = middle;
    } else {
      high = middle;
    }
  }
  return fits;
}
