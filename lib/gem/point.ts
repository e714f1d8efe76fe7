/**
 * Points in a view's own frame, and the clock.
 *
 * Origin at the centre of the girdle outline, x to the right, y up as the view is seen; unit: girdle width.
 * The pavilion view is the stone turned over left to right. Clock positions are degrees clockwise from 12 as
 * the CROWN is seen, for both views: what lies at 3 o'clock lies on the right of the crown view and on the
 * left of the pavilion view.
 */

/** [x, y] in the frame of a view. */
export type Point = readonly [x: number, y: number];

/** The two views of a stone, in the order in which lists are sorted. */
export const VIEWS = ["crown", "pavilion"] as const;

/** Which side of the stone faces the viewer. */
export type View = (typeof VIEWS)[number];

const DEG = Math.PI / 180;

/** The same place straight through the stone, in the other view's frame: (x, y) -> (-x, y). Its own inverse. */
export function toOtherView(point: Point): Point {
  return [0 - point[0], point[1]];
}

/** A point of a view in the crown view's frame, straight through the stone. */
export function toCrownPoint(view: View, point: Point): Point {
  return view === "crown" ? point : toOtherView(point);
}

/**
 * The clock position of a point in degrees, 0 at 12 o'clock, in [0, 360). The sense is the crown view's for
 * both views: a point on the left of the pavilion view is at 90, 3 o'clock. The origin gives 0.
 */
export function toClockDeg(view: View, point: Point): number {
  const [x, y] = toCrownPoint(view, point);
  if (x === 0 && y === 0) return 0;
  const deg = Math.atan2(x, y) / DEG;
  const clockDeg = deg < 0 ? deg + 360 : deg;
  return clockDeg >= 360 ? 0 : clockDeg;
}

/** The point at a clock position (degrees, the crown view's sense) and a distance from the centre, in a view's frame. */
export function fromClockDeg(view: View, clockDeg: number, radius: number): Point {
  const x = radius * Math.sin(clockDeg * DEG);
  const y = radius * Math.cos(clockDeg * DEG);
  return view === "crown" ? [x, y] : [0 - x, y];
}

/**
 * The point after the stone has been turned by `turnDeg` degrees clockwise as the crown is seen: the crown
 * view turns clockwise, the pavilion view counter-clockwise. Quarter turns are exact.
 */
export function turnPoint(view: View, point: Point, turnDeg: number): Point {
  const clockwiseDeg = view === "crown" ? turnDeg : -turnDeg;
  const quarter = (((clockwiseDeg % 360) + 360) % 360) / 90;
  const [x, y] = point;
  if (quarter === 0) return point;
  if (quarter === 1) return [y, 0 - x];
  if (quarter === 2) return [0 - x, 0 - y];
  if (quarter === 3) return [0 - y, x];
  const cos = Math.cos(clockwiseDeg * DEG);
  const sin = Math.sin(clockwiseDeg * DEG);
  return [x * cos + y * sin, y * cos - x * sin];
}
