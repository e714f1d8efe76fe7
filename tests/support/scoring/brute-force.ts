/** Slow and plain second opinions on the engine's geometry and assignment, written without a look at how it does it. */

export type Xy = readonly [number, number];

/** Every way to give rows different columns or none; the most that the gains can add up to. */
export function maximiseByTrial(
  gains: readonly (readonly number[])[],
  row = 0,
  used = new Set<number>(),
): number {
  if (row === gains.length) return 0;
  let best = maximiseByTrial(gains, row + 1, used);
  (gains[row] ?? []).forEach((gain, column) => {
    if (gain <= 0 || used.has(column)) return;
    used.add(column);
    best = Math.max(best, gain + maximiseByTrial(gains, row + 1, used));
    used.delete(column);
  });
  return best;
}

/** The least sum over all permutations of the longer side, as many allowed pairs as can be made; Infinity forbids. */
export function minimiseByTrial(costs: readonly (readonly number[])[]): { pairs: number; cost: number } {
  const columns = costs[0]?.length ?? 0;
  const search = (row: number, used: ReadonlySet<number>): { pairs: number; cost: number } => {
    if (row === costs.length) return { pairs: 0, cost: 0 };
    let best = search(row + 1, used);
    for (let column = 0; column < columns; column += 1) {
      const cost = costs[row]?.[column] ?? Number.POSITIVE_INFINITY;
      if (used.has(column) || !Number.isFinite(cost)) continue;
      const rest = search(row + 1, new Set([...used, column]));
      const here = { pairs: rest.pairs + 1, cost: rest.cost + cost };
      if (here.pairs > best.pairs || (here.pairs === best.pairs && here.cost < best.cost)) best = here;
    }
    return best;
  };
  return search(0, new Set());
}

/** Distance from a point to a segment by ternary search along it: distance is convex there. */
export function getSegmentDistance([x, y]: Xy, [ax, ay]: Xy, [bx, by]: Xy): number {
  const at = (t: number) => Math.hypot(ax + t * (bx - ax) - x, ay + t * (by - ay) - y);
  let [low, high] = [0, 1];
  for (let i = 0; i < 200; i += 1) {
    const [left, right] = [low + (high - low) / 3, high - (high - low) / 3];
    if (at(left) < at(right)) high = right;
    else low = left;
  }
  return Math.min(at(low), at(0), at(1));
}

/** Whether a point lies in a polygon, by the angle that the polygon turns about it. */
export function isInsideByWinding([x, y]: Xy, polygon: readonly Xy[]): boolean {
  const turn = polygon.reduce((sum, [ax, ay], i) => {
    const [bx, by] = polygon[(i + 1) % polygon.length] as Xy;
    const step = Math.atan2(by - y, bx - x) - Math.atan2(ay - y, ax - x);
    return sum + Math.atan2(Math.sin(step), Math.cos(step));
  }, 0);
  return Math.abs(turn) > Math.PI;
}

/** The point at a share of a path's length, by walking it in many small steps. */
export function walkPath(path: readonly Xy[], share: number): Xy {
  const steps = path
    .slice(1)
    .map((to, i) => Math.hypot(to[0] - (path[i] as Xy)[0], to[1] - (path[i] as Xy)[1]));
  let left = share * steps.reduce((sum, step) => sum + step, 0);
  for (let i = 0; i < steps.length; i += 1) {
    const [step, [ax, ay], [bx, by]] = [steps[i] as number, path[i] as Xy, path[i + 1] as Xy];
    if (left <= step && step > 0) return [ax + (left / step) * (bx - ax), ay + (left / step) * (by - ay)];
    left -= step;
  }
  return path[path.length - 1] as Xy;
}

/** The smallest circle by trying every pair and every three points. */
export function findSmallestByTrial(points: readonly Xy[]): number {
  const circles: { x: number; y: number; r: number }[] = [];
  points.forEach(([ax, ay], i) => {
    points.slice(i + 1).forEach(([bx, by], j) => {
      circles.push({ x: (ax + bx) / 2, y: (ay + by) / 2, r: Math.hypot(ax - bx, ay - by) / 2 });
      for (const [cx, cy] of points.slice(i + j + 2)) {
        const d = 2 * (ax * (by - cy) + bx * (cy - ay) + cx * (ay - by));
        if (Math.abs(d) < 1e-12) continue;
        const [a2, b2, c2] = [ax * ax + ay * ay, bx * bx + by * by, cx * cx + cy * cy];
        const x = (a2 * (by - cy) + b2 * (cy - ay) + c2 * (ay - by)) / d;
        const y = (a2 * (cx - bx) + b2 * (ax - cx) + c2 * (bx - ax)) / d;
        circles.push({ x, y, r: Math.hypot(ax - x, ay - y) });
      }
    });
  });
  const holding = circles.filter(({ x, y, r }) =>
    points.every(([px, py]) => Math.hypot(px - x, py - y) <= r + 1e-9),
  );
  return Math.min(...holding.map(({ r }) => r), points.length < 2 ? 0 : Number.POSITIVE_INFINITY);
}
