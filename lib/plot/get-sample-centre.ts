import type { Point } from "@/lib/gem/point";
import type { Shape } from "@/lib/plot/shape";

/** Points along a stroke or an outline that stand for it (scoring.md 1). */
const SAMPLE_COUNT = 24;

/** The point at `along` of a chain of points; the last one for a length beyond its end. */
function walk(points: readonly Point[], along: number): Point {
  let left = along;
  for (let i = 1; i < points.length; i += 1) {
    const [ax, ay] = points[i - 1] as Point;
    const [bx, by] = points[i] as Point;
    const length = Math.hypot(bx - ax, by - ay);
    if (length > 0 && left <= length) {
      return [ax + ((bx - ax) * left) / length, ay + ((by - ay) * left) / length];
    }
    left -= length;
  }
  return points[points.length - 1] as Point;
}

function getLength(points: readonly Point[]): number {
  return points
    .slice(1)
    .reduce(
      (sum, [x, y], i) => sum + Math.hypot(x - (points[i] as Point)[0], y - (points[i] as Point)[1]),
      0,
    );
}

/**
 * The mean of a shape's samples, in its view's frame (scoring.md 1): of a dot the point itself; of a stroke 24 points
 * evenly spaced, both ends included; of an outline 24 evenly spaced round it from its first vertex.
 */
export function getSampleCentre(shape: Shape): Point {
  if (shape.kind === "dot") return shape.at;
  const isClosed = shape.kind === "outline";
  const points = isClosed ? [...shape.points, shape.points[0] as Point] : shape.points;
  const step = getLength(points) / (isClosed ? SAMPLE_COUNT : SAMPLE_COUNT - 1);
  let [x, y] = [0, 0];
  for (let k = 0; k < SAMPLE_COUNT; k += 1) {
    const sample = walk(points, k * step);
    x += sample[0];
    y += sample[1];
  }
  return [x / SAMPLE_COUNT, y / SAMPLE_COUNT];
}
