import type { FacetPlane } from "@/lib/gem/facet-plane";
import {
  addVec3,
  advanceVec3,
  crossVec3,
  dotVec3,
  scaleVec3,
  subtractVec3,
  toUnitVec3,
  type Vec3,
} from "@/lib/gem/vec3";

/** Lengths below this (girdle widths) are nought when polygons are clipped. */
export const CLIP_TOLERANCE = 1e-9;

const REACH = 16; // half the side of the square that is clipped: far outside any stone

function getStartSquare(plane: FacetPlane): Vec3[] {
  const { normal, offset } = plane;
  const helper: Vec3 = Math.abs(normal[2]) > 0.9 ? [1, 0, 0] : [0, 0, 1];
  const u = toUnitVec3(crossVec3(helper, normal));
  const v = crossVec3(normal, u);
  const centre = scaleVec3(normal, offset);
  const corners: readonly (readonly [number, number])[] = [
    [1, 1],
    [-1, 1],
    [-1, -1],
    [1, -1],
  ];
  return corners.map(([a, b]) => addVec3(centre, addVec3(scaleVec3(u, a * REACH), scaleVec3(v, b * REACH))));
}

function isWithin(polygon: readonly Vec3[], normal: Vec3, offset: number): boolean {
  for (let i = 0; i < polygon.length; i += 1) {
    if (dotVec3(normal, polygon[i] as Vec3) - offset > CLIP_TOLERANCE) return false;
  }
  return true;
}

/** The part of a convex polygon that a plane leaves; counter-clockwise stays counter-clockwise. */
function clipPolygon(polygon: readonly Vec3[], { normal, offset }: FacetPlane): readonly Vec3[] {
  if (isWithin(polygon, normal, offset)) return polygon;
  const out: Vec3[] = [];
  let from = polygon[polygon.length - 1] as Vec3;
  let before = dotVec3(normal, from) - offset;
  for (const to of polygon) {
    const after = dotVec3(normal, to) - offset;
    const crosses =
      (before > CLIP_TOLERANCE && after < -CLIP_TOLERANCE) ||
      (before < -CLIP_TOLERANCE && after > CLIP_TOLERANCE);
    if (crosses) out.push(advanceVec3(from, subtractVec3(to, from), before / (before - after)));
    if (after <= CLIP_TOLERANCE) out.push(to);
    [from, before] = [to, after];
  }
  return out;
}

/**
 * The convex solid that planes leave, as one polygon for each plane in the order of the planes,
 * counter-clockwise from outside. A plane that takes nothing away gives an empty or a degenerate polygon.
 * Method: each plane starts as one large square and is clipped by all others (check-values.md 2.2 counts agree).
 */
export function clipPlanes(planes: readonly FacetPlane[]): (readonly Vec3[])[] {
  return planes.map((plane, i) => {
    let polygon: readonly Vec3[] = getStartSquare(plane);
    for (let j = 0; j < planes.length && polygon.length > 2; j += 1) {
      if (j !== i) polygon = clipPolygon(polygon, planes[j] as FacetPlane);
    }
    return polygon.length > 2 ? polygon : [];
  });
}
