import { AppError } from "@/lib/base/app-error";
import { listCellsAt } from "@/lib/gem/cut-cells";
import { locatePoint } from "@/lib/gem/locate-point";
import { type Point, toCrownPoint, type View } from "@/lib/gem/point";
import { refractInward } from "@/lib/gem/refraction";
import type { Solid } from "@/lib/gem/solid";
import { findHit } from "@/lib/gem/trace-ray";
import { advanceVec3, type Vec3 } from "@/lib/gem/vec3";

/** Inclusions are kept this share of the line of sight away from the surface, so that they lie in the stone. */
const SKIN = 1e-6;

/**
 * Where in the stone an inclusion sits that is seen at a point of a view, in the stone's own frame.
 *
 * `depth` runs along the refracted line of sight from 0 at the surface that faces the viewer, where the
 * inclusion is seen, to 1 at the surface behind. For a mark drawn in the crown view that is from crown to
 * pavilion (design: frame of reference); for one drawn in the pavilion view it is read alike, from the pavilion
 * inward to the crown. Depths beyond 0 and 1 are taken as 0 and 1. A point between the drawn outline and the
 * solid's straight girdle chord is seen through the facet next to it, at the girdle's edge. Throws AppError
 * "bad-input" for a point outside the girdle.
 */
export function placeInclusion(
  solid: Solid,
  view: View,
  point: Point,
  depth: number,
  refractiveIndex: number,
): Vec3 {
  const { facetIndex } = locatePoint(solid, view, point);
  const facet = facetIndex === null ? undefined : solid.facets[facetIndex];
  if (facet === undefined) throw new AppError("bad-input", "An inclusion lies within the girdle.");
  const sight: Vec3 = [0, 0, view === "crown" ? -1 : 1];
  const direction = refractInward(sight, facet.normal, refractiveIndex);
  if (direction === null) throw new AppError("bad-input", "An inclusion lies behind a facet.");
  const [x, y] = pullInside(solid, toCrownPoint(view, point));
  const z = (facet.offset - facet.normal[0] * x - facet.normal[1] * y) / facet.normal[2];
  const surface: Vec3 = [x, y, z];
  const cell = listCellsAt(solid, surface).find(
    ({ lobe }) => facet.lobe === "both" || lobe === "both" || lobe === facet.lobe,
  );
  const hit = cell === undefined ? null : findHit(solid, cell, surface, direction);
  const share = Math.min(1 - SKIN, Math.max(SKIN, depth));
  return advanceVec3(surface, direction, (hit?.distance ?? 0) * share);
}

/** The point, or for one between the outline and the girdle's chord the chord's point on the way to the centre. */
function pullInside(solid: Solid, point: Point): Point {
  const [x, y] = point;
  let keep = 1;
  for (const { side, normal, offset, lobe } of solid.facets) {
    if (side !== "girdle" || (lobe !== "both" && (lobe === "right") !== x >= 0)) continue;
    const out = normal[0] * x + normal[1] * y;
    if (out > offset && offset > 0) keep = Math.min(keep, offset / out);
  }
  return keep === 1 ? point : [x * keep, y * keep];
}
