/** A circle in a view's frame; `radius` in girdle widths. */
export interface Circle {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** A point this much outside, relative to the radius squared, counts as on the circle. */
const SLACK = 1e-12;

/** The points in an order of their own, fixed for a count, so that no drawing order makes the search slow. */
function mixPoints(points: Float64Array): Float64Array {
  const mixed = points.slice();
  let state = 0x2545f491;
  for (let i = mixed.length / 2 - 1; i > 0; i -= 1) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    const j = Math.floor((state / 4294967296) * (i + 1));
    const x = mixed[2 * i] as number;
    const y = mixed[2 * i + 1] as number;
    mixed[2 * i] = mixed[2 * j] as number;
    mixed[2 * i + 1] = mixed[2 * j + 1] as number;
    mixed[2 * j] = x;
    mixed[2 * j + 1] = y;
  }
  return mixed;
}

function holds(circle: Circle, x: number, y: number): boolean {
  const dx = x - circle.x;
  const dy = y - circle.y;
  const radius2 = circle.radius * circle.radius;
  return dx * dx + dy * dy <= radius2 * (1 + SLACK) + Number.MIN_VALUE;
}

/** What Math.hypot would give, to rounding, in a fraction of its time: places lie within a girdle width. */
function getLength(dx: number, dy: number): number {
  return Math.sqrt(dx * dx + dy * dy);
}

function spanTwo(ax: number, ay: number, bx: number, by: number): Circle {
  return { x: (ax + bx) / 2, y: (ay + by) / 2, radius: getLength(ax - bx, ay - by) / 2 };
}

/** The circle through three points; for three on a line, the one on the two that are farthest apart. */
function spanThree(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): Circle {
  const [ux, uy, vx, vy] = [bx - ax, by - ay, cx - ax, cy - ay];
  const [u2, v2] = [ux * ux + uy * uy, vx * vx + vy * vy];
  const cross = 2 * (ux * vy - uy * vx);
  if (Math.abs(cross) <= 1e-14 * (u2 + v2)) {
    const spans = [spanTwo(ax, ay, bx, by), spanTwo(ax, ay, cx, cy), spanTwo(bx, by, cx, cy)];
    return spans.reduce((widest, span) => (span.radius > widest.radius ? span : widest));
  }
  const dx = (vy * u2 - uy * v2) / cross;
  const dy = (ux * v2 - vx * u2) / cross;
  return { x: ax + dx, y: ay + dy, radius: getLength(dx, dy) };
}

/**
 * The smallest circle that encloses all points (Welzl 1991, the incremental form; from memory).
 * `points` holds x, y, x, y … in girdle widths. One point gives radius 0; no point gives the circle of radius 0
 * at the origin. Expected time is linear in the number of points.
 */
export function findSmallestCircle(points: Float64Array): Circle {
  const p = mixPoints(points);
  let circle: Circle = { x: p[0] ?? 0, y: p[1] ?? 0, radius: 0 };
  for (let i = 2; i < p.length; i += 2) {
    const ax = p[i] as number;
    const ay = p[i + 1] as number;
    if (holds(circle, ax, ay)) continue;
    circle = { x: ax, y: ay, radius: 0 };
    for (let j = 0; j < i; j += 2) {
      const bx = p[j] as number;
      const by = p[j + 1] as number;
      if (holds(circle, bx, by)) continue;
      circle = spanTwo(ax, ay, bx, by);
      for (let k = 0; k < j; k += 2) {
        const cx = p[k] as number;
        const cy = p[k + 1] as number;
        if (!holds(circle, cx, cy)) circle = spanThree(ax, ay, bx, by, cx, cy);
      }
    }
  }
  return circle;
}
