import { type Cell, getOtherCell, WALL } from "@/lib/gem/cut-cells";
import type { Solid } from "@/lib/gem/solid";
import { advanceVec3, dotVec3, type Vec3 } from "@/lib/gem/vec3";

/** Two planes met within this of each other (girdle widths) are met together: the ray grazes an edge. */
export const GRAZE_TOLERANCE = 1e-9;

/** Where a ray inside the stone meets the surface from within. */
export interface Hit {
  readonly facetIndex: number;
  readonly at: Vec3;
  /** From the start of the ray, in lengths of its direction. */
  readonly distance: number;
  readonly cell: Cell;
}

/** Where a ray leaves its cell; of several faces met together the wanted one, then the first. */
function findExit(cell: Cell, from: Vec3, direction: Vec3, wanted: number | null) {
  let nearest = Number.POSITIVE_INFINITY;
  let facetIndex: number | null = null;
  let wantedAt = Number.POSITIVE_INFINITY;
  for (const face of cell.faces) {
    const speed = dotVec3(face.normal, direction);
    if (speed <= 1e-12) continue;
    const t = Math.max(0, (face.offset - dotVec3(face.normal, from)) / speed);
    if (face.facetIndex === wanted) wantedAt = t;
    if (t < nearest) [nearest, facetIndex] = [t, face.facetIndex];
  }
  if (facetIndex === null) return null;
  return wantedAt <= nearest + GRAZE_TOLERANCE
    ? { facetIndex: wanted ?? facetIndex, t: wantedAt }
    : { facetIndex, t: nearest };
}

/**
 * The facet that a ray within the stone meets next. `cell` is the convex part that it starts in; the wall of a
 * cleft stone is passed. Where the ray grazes an edge, so that several facets are met together, `wanted` names
 * the one to take; else the first in the solid's order is taken. Light that would leave a heart through its
 * cleft counts as met there: what it does outside the stone is not followed. Null when nothing is met, as for
 * a direction of no length.
 */
export function findHit(
  solid: Solid,
  cell: Cell,
  from: Vec3,
  direction: Vec3,
  wanted: number | null = null,
): Hit | null {
  let here = cell;
  let at = from;
  let distance = 0;
  for (let walls = 0; walls < 3; walls += 1) {
    const exit = findExit(here, at, direction, wanted);
    if (exit === null) return null;
    at = advanceVec3(at, direction, exit.t);
    distance += exit.t;
    if (exit.facetIndex !== WALL) return { facetIndex: exit.facetIndex, at, distance, cell: here };
    here = getOtherCell(solid, here);
  }
  return null;
}
