/** The line at a given distance round a shape, so that the tolerance drawn is the tolerance scored. Pure. */
import { getDistanceToLine, getMiddle } from "@/lib/editor/measure-shape";
import { isInsidePolygon } from "@/lib/gem/is-inside-outline";
import type { Point } from "@/lib/gem/point";
import type { Shape } from "@/lib/plot/shape";

const RAYS = 72;
/** Steps from outside in, before the line is closed in on; finer than any bend that a hand draws. */
const STEPS = 48;
const HALVINGS = 14;

/** As scoring.md 1 measures it: to the nearest point of the line, 0 inside an outline. */
function getDistanceToShape(shape: Shape, point: Point): number {
  if (shape.kind === "dot") return Math.hypot(point[0] - shape.at[0], point[1] - shape.at[1]);
  if (shape.kind === "outline" && isInsidePolygon(shape.points, point)) return 0;
  return getDistanceToLine(shape, point);
}

/**
 * A closed line of points, each `reach` away from the shape along a ray from the shape's middle: exact for a dot; round
 * a strongly bent shape the line is the outermost one along each ray, and goes straight across where a ray meets none. Girdle widths.
 */
export function traceTolerance(shape: Shape, reach: number): Point[] {
  const [x, y] = getMiddle(shape);
  const vertices = shape.kind === "dot" ? [shape.at] : shape.points;
  const most = reach + Math.max(...vertices.map(([vx, vy]) => Math.hypot(vx - x, vy - y)));
  return Array.from({ length: RAYS }, (_, ray) => ray).flatMap((ray): Point[] => {
    const angle = (2 * Math.PI * ray) / RAYS;
    const at = (radius: number): Point => [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
    const isWithin = (radius: number) => getDistanceToShape(shape, at(radius)) <= reach;
    let step = STEPS;
    while (step > 0 && !isWithin((most * step) / STEPS)) step -= 1;
    if (step === 0 && !isWithin(0)) return [];
    let inner = (most * step) / STEPS;
    let outer = (most * (step + 1)) / STEPS;
    for (let halving = 0; halving < HALVINGS; halving += 1) {
      const middle = (inner + outer) / 2;
      if (isWithin(middle)) inner = middle;
      else outer = middle;
    }
    return [at((inner + outer) / 2)];
  });
}
