import { crossVec3, dotVec3, subtractVec3, toUnitVec3, type Vec3 } from "@/lib/gem/vec3";

/** Which part of the stone a facet belongs to. */
export type FacetSide = "crown" | "girdle" | "pavilion";

/**
 * A facet as a cutter grinds it: everything with `normal . x > offset` is taken away. `normal` points outward
 * and has length 1; `offset` is in girdle widths from the origin.
 */
export interface FacetPlane {
  readonly kind: string;
  readonly side: FacetSide;
  readonly normal: Vec3;
  readonly offset: number;
  /** A name of its own; without one the facet is named by its kind and number. */
  readonly name?: string;
}

/** A plane from any outward normal and a point on it; throws RangeError for a zero normal. */
export function toFacetPlane(kind: string, side: FacetSide, outward: Vec3, on: Vec3): FacetPlane {
  const normal = toUnitVec3(outward);
  return { kind, side, normal, offset: dotVec3(normal, on) };
}

/**
 * The plane through three points, turned so that `inside` lies behind it. Throws RangeError when the points
 * are on one line.
 */
export function toPlaneThrough(
  kind: string,
  side: FacetSide,
  [a, b, c]: readonly [Vec3, Vec3, Vec3],
  inside: Vec3,
): FacetPlane {
  const normal = toUnitVec3(crossVec3(subtractVec3(b, a), subtractVec3(c, a)));
  const outward: Vec3 =
    dotVec3(normal, subtractVec3(inside, a)) > 0 ? [0 - normal[0], 0 - normal[1], 0 - normal[2]] : normal;
  return { kind, side, normal: outward, offset: dotVec3(outward, a) };
}
