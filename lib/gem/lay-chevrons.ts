import { type FacetPlane, toFacetPlane, toPlaneThrough } from "@/lib/gem/facet-plane";
import type { Point } from "@/lib/gem/point";
import type { Vec3 } from "@/lib/gem/vec3";

/** A straight side of a pavilion that is filled with chevrons between its girdle and the mains at its ends. */
export interface ChevronSide {
  /** The ends of the side, where mains meet the girdle. */
  readonly from: Point;
  readonly to: Point;
  /** The point of the side on the ray from the apex along which the two mains meet. */
  readonly middle: Point;
  readonly apex: Point;
  /** Depth of the mains at the apex below the girdle, and the share of the way down that they rise to `middle`. */
  readonly depth: number;
  readonly mainShare: number;
  readonly halfGirdle: number;
}

/** How far from the apex, in shares of the way to the girdle, the chevrons end and the mains take over. */
const WAIST = 0.4;
/** How much of the freedom between a straight flank and a flank as flat as the mains the bulge uses. */
const BULGE = 0.6;

/**
 * The profile of the flank over the ray from the apex to `middle`: points from the girdle down to where it meets
 * the mains, in equal steps, each flatter than the one before and the last still steeper than the mains.
 */
function listProfile(side: ChevronSide, segments: number): Vec3[] {
  const total = side.depth * (1 - WAIST * side.mainShare);
  const freedom = 1 - (side.mainShare * (1 - WAIST)) / (1 - WAIST * side.mainShare);
  const points: Vec3[] = [];
  let sunk = 0;
  for (let i = 0; i <= segments; i += 1) {
    const q = 1 - ((1 - WAIST) * i) / segments;
    points.push([
      side.apex[0] + (side.middle[0] - side.apex[0]) * q,
      side.apex[1] + (side.middle[1] - side.apex[1]) * q,
      -side.halfGirdle - sunk,
    ]);
    const lean = segments === 1 ? 0 : 1 - (2 * i) / (segments - 1);
    sunk += (total / segments) * (1 + BULGE * freedom * lean);
  }
  return points;
}

/**
 * The facets of one side: the lower-girdle facet along it, then `count` pairs of chevrons that fan out from its
 * two ends to the profile, "chevron-1" next to the girdle. All meet in the ends of the side, so the facets
 * close without slivers.
 */
export function layChevrons(side: ChevronSide, count: number): FacetPlane[] {
  const profile = listProfile(side, count + 1);
  const inside: Vec3 = [side.apex[0], side.apex[1], 0];
  const from: Vec3 = [side.from[0], side.from[1], -side.halfGirdle];
  const to: Vec3 = [side.to[0], side.to[1], -side.halfGirdle];
  const planes = [toPlaneThrough("lower-girdle", "pavilion", [from, to, profile[1] as Vec3], inside)];
  for (let i = 1; i <= count; i += 1) {
    const [high, low] = [profile[i] as Vec3, profile[i + 1] as Vec3];
    planes.push(toPlaneThrough(`chevron-${i}`, "pavilion", [from, high, low], inside));
    planes.push(toPlaneThrough(`chevron-${i}`, "pavilion", [to, high, low], inside));
  }
  return planes;
}

/** A short side with no room for chevrons: its lower-girdle facet and one flatter facet below it. */
export function layCornerChevron(side: ChevronSide): FacetPlane[] {
  const [, high, low] = listProfile(side, 2) as [Vec3, Vec3, Vec3];
  const inside: Vec3 = [side.apex[0], side.apex[1], 0];
  const from: Vec3 = [side.from[0], side.from[1], -side.halfGirdle];
  const to: Vec3 = [side.to[0], side.to[1], -side.halfGirdle];
  const beside: Vec3 = [high[0] + to[0] - from[0], high[1] + to[1] - from[1], high[2]];
  return [
    toPlaneThrough("lower-girdle", "pavilion", [from, to, high], inside),
    toPlaneThrough("corner-chevron", "pavilion", [high, beside, low], inside),
  ];
}

/** A pavilion main from a corner of the girdle down to the apex, facing `normal` (horizontal, unit length). */
export function layMain(
  corner: Point,
  normal: Point,
  side: Pick<ChevronSide, "apex" | "depth" | "halfGirdle">,
) {
  const span = (corner[0] - side.apex[0]) * normal[0] + (corner[1] - side.apex[1]) * normal[1];
  const rise = side.depth / span;
  return toFacetPlane(
    "pavilion-main",
    "pavilion",
    [normal[0] * rise, normal[1] * rise, -1],
    [corner[0], corner[1], -side.halfGirdle],
  );
}
