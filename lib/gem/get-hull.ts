import type { Point } from "@/lib/gem/point";

/**
 * The convex hull of points, counter-clockwise, without points within its sides (Andrew 1979, monotone chain).
 * Empty input gives an empty hull.
 */
export function getHull(points: readonly Point[]): Point[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (source: readonly Point[]) => {
    const chain: Point[] = [];
    for (const point of source) {
      while (chain.length > 1) {
        const [a, b] = [chain[chain.length - 2] as Point, chain[chain.length - 1] as Point];
        if ((b[0] - a[0]) * (point[1] - a[1]) - (b[1] - a[1]) * (point[0] - a[0]) > 1e-12) break;
        chain.pop();
      }
      chain.push(point);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half([...sorted].reverse())];
}
