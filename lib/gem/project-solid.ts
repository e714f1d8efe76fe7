import type { Point } from "@/lib/gem/point";
import type { Solid } from "@/lib/gem/solid";
import type { Vec3 } from "@/lib/gem/vec3";

/**
 * How a stone is held towards the viewer. `spinDeg` turns it about its axis, clockwise as the crown is seen;
 * then `tiltDeg` tips the table away: 0 shows the crown view, 90 the profile with the table up (seen from 6
 * o'clock), 180 the pavilion.
 */
export interface Rotation {
  readonly spinDeg: number;
  readonly tiltDeg: number;
}

/** A point as it is seen. */
export interface Projected {
  /** x to the right, y up, in girdle widths. */
  readonly at: Point;
  /** Towards the viewer, in girdle widths; 0 for the origin of the stone. */
  readonly nearness: number;
}

/** An edge of the wireframe. */
export interface ProjectedEdge {
  readonly from: Projected;
  readonly to: Projected;
  /** True when one of the two facets beside it faces the viewer. */
  readonly isFront: boolean;
  /** True when just one of them does: part of the stone's outline as seen (of a convex stone, all of it). */
  readonly isSilhouette: boolean;
}

const DEG = Math.PI / 180;

/** A point or direction of the stone as seen in a rotation (parallel projection). */
export function projectVec3([x, y, z]: Vec3, { spinDeg, tiltDeg }: Rotation): Projected {
  const [spinCos, spinSin] = [Math.cos(spinDeg * DEG), Math.sin(spinDeg * DEG)];
  const [tiltCos, tiltSin] = [Math.cos(tiltDeg * DEG), Math.sin(tiltDeg * DEG)];
  const right = x * spinCos + y * spinSin;
  const up = y * spinCos - x * spinSin;
  return { at: [right, up * tiltCos + z * tiltSin], nearness: z * tiltCos - up * tiltSin };
}

/**
 * The wireframe of a solid as seen in a rotation: every edge once, the ones behind first, so that drawing them
 * in order draws the front on top.
 */
export function projectSolid(solid: Solid, rotation: Rotation): ProjectedEdge[] {
  const corners = solid.vertices.map((vertex) => projectVec3(vertex, rotation));
  const sides = new Map<number, { from: number; to: number; front: number; back: number }>();
  for (const facet of solid.facets) {
    const isFront = projectVec3(facet.normal, rotation).nearness > 1e-9;
    facet.vertices.forEach((from, i) => {
      const to = facet.vertices[(i + 1) % facet.vertices.length] as number;
      const key = Math.min(from, to) * corners.length + Math.max(from, to);
      const side = sides.get(key) ?? { from, to, front: 0, back: 0 };
      if (isFront) side.front += 1;
      else side.back += 1;
      sides.set(key, side);
    });
  }
  const edges = [...sides.values()].map(({ from, to, front, back }) => ({
    from: corners[from] as Projected,
    to: corners[to] as Projected,
    isFront: front > 0,
    isSilhouette: front > 0 && back > 0,
  }));
  return edges.sort((a, b) => Number(a.isFront) - Number(b.isFront));
}
