import type { SeededRandom } from "@/lib/base/seeded-random";
import type { Point } from "@/lib/gem/point";
import { listVertices, type Shape } from "@/lib/plot/shape";

/** The gap between two pieces, as a share of the whole length. */
const GAP = 0.06;

function findFarthestPair(vertices: readonly Point[]): [Point, Point] {
  let pair: [Point, Point] = [
    [0, 0],
    [0, 0],
  ];
  let longest = -1;
  for (const a of vertices) {
    for (const b of vertices) {
      const length = Math.hypot(a[0] - b[0], a[1] - b[1]);
      if (length > longest) {
        longest = length;
        pair = [a, b];
      }
    }
  }
  return pair;
}

/**
 * A long shape as a hasty hand draws it in pieces: two or three strokes along its long axis with gaps between, the
 * longest first. A dot comes back as it is.
 */
export function splitShape(random: SeededRandom, shape: Shape): Shape[] {
  if (shape.kind === "dot") return [shape];
  const [from, to] = findFarthestPair(listVertices(shape));
  const first = 0.4 + 0.2 * random.next();
  const cuts = random.chance(0.3) ? [0, first, (first + 1) / 2, 1] : [0, first, 1];
  const at = (share: number): [number, number] => [
    from[0] + (to[0] - from[0]) * share,
    from[1] + (to[1] - from[1]) * share,
  ];
  return cuts
    .slice(1)
    .map((end, index) => ({ start: (cuts[index] ?? 0) + (index === 0 ? 0 : GAP), end }))
    .sort((a, b) => b.end - b.start - (a.end - a.start))
    .map(({ start, end }): Shape => ({ kind: "stroke", points: [at(start), at(end)] }));
}
