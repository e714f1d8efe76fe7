import classes from "@/components/stone/stone-figures.module.css";
import type { Point } from "@/lib/gem/point";
import type { Solid } from "@/lib/gem/solid";
import { toSvgPath } from "@/lib/gem/to-svg";

/** Edges of the facets that face 6 o'clock, as seen from there: x to the right, z up. Each once. */
function listProfileEdges(solid: Solid): (readonly [Point, Point])[] {
  const drawn = new Set<string>();
  const edges: (readonly [Point, Point])[] = [];
  for (const { normal, vertices } of solid.facets) {
    if (normal[1] > 1e-9) continue;
    vertices.forEach((from, i) => {
      const to = vertices[(i + 1) % vertices.length] ?? from;
      const key = `${Math.min(from, to)}-${Math.max(from, to)}`;
      const a = solid.vertices[from];
      const b = solid.vertices[to];
      if (drawn.has(key) || a === undefined || b === undefined) return;
      drawn.add(key);
      edges.push([
        [a[0], a[2]],
        [b[0], b[2]],
      ]);
    });
  }
  return edges;
}

/** The stone from the side, as it is seen from 6 o'clock, with a scale for its height. */
export function ProfileFigure({ solid }: { solid: Solid }) {
  const xs = solid.vertices.map(([x]) => x);
  const zs = solid.vertices.map(([, , z]) => z);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [low, high] = [Math.min(...zs), Math.max(...zs)];
  const girdle = solid.girdleThickness / 2;
  const scaleX = right + 0.07;
  const heights = [high, girdle, -girdle, low];
  const box = `${left - 0.06} ${-high - 0.05} ${right - left + 0.22} ${high - low + 0.1}`;
  return (
    <svg viewBox={box} className={classes.profile} role="img" aria-label="Profile, seen from 6 o'clock">
      <path
        className={classes.edges}
        d={listProfileEdges(solid)
          .map((edge) => toSvgPath(edge, false))
          .join("")}
      />
      <path className={classes.scale} d={`M${scaleX} ${-high}V${-low}`} />
      {heights.map((z, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the four heights have fixed places, and two may be equal
        <path key={i} className={classes.scale} d={`M${scaleX - 0.02} ${-z}h0.04`} />
      ))}
    </svg>
  );
}
