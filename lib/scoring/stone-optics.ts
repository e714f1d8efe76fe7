/** Where a reference mark shows up besides the place where it was drawn (SPEC 2.5, 5.4). */
import { isAppError } from "@/lib/base/app-error";
import { findImages } from "@/lib/gem/find-images";
import { placeInclusion } from "@/lib/gem/place-inclusion";
import { type Point, toOtherView, type View } from "@/lib/gem/point";
import type { Solid } from "@/lib/gem/solid";
import type { ReferenceMark } from "@/lib/plot/mark";
import type { MarkGeometry, Motion } from "@/lib/scoring/mark-geometry";
import { moveGeometry } from "@/lib/scoring/mark-geometry";

/** Images are followed so far; weaker ones are dropped (design: echoes). */
const MAX_BOUNCES = 3;
const MIN_STRENGTH = 0.1;
/** A direct image in the mark's own view within this of the mark's centre is the mark itself (girdle widths). */
const OWN_PLACE = 1e-4;

/** A repetition of a reference mark that the stone shows: reflected, or refracted once more in its own view. */
export interface Echo {
  readonly view: View;
  readonly at: Point;
  /** 0 for a second direct image in the mark's own view. */
  readonly bounces: number;
  readonly strength: number;
  /** Facet names, the one that is looked through first. */
  readonly facets: readonly string[];
}

/** What stands in for an inside mark in the view in which it was not drawn. */
export interface StandIn {
  readonly geometry: MarkGeometry;
  /** The facet that it is seen through; null for the place straight through the stone. */
  readonly facet: string | null;
}

export interface MarkOptics {
  readonly echoes: readonly Echo[];
  readonly standIns: readonly StandIn[];
}

const STRAIGHT_THROUGH: Motion = { xx: -1, xy: 0, yx: 0, yy: 1, dx: 0, dy: 0 };

function listImages(mark: ReferenceMark, geometry: MarkGeometry, solid: Solid, refractiveIndex: number) {
  if (mark.depth === undefined) return null;
  try {
    const centre: Point = [geometry.centreX, geometry.centreY];
    const at = placeInclusion(solid, mark.view, centre, mark.depth, refractiveIndex);
    return findImages(solid, at, { refractiveIndex, maxBounces: MAX_BOUNCES, minStrength: MIN_STRENGTH });
  } catch (thrown) {
    // The centre of a curved stroke may lie outside a girdle that is not convex: such a mark cannot be traced.
    if (isAppError(thrown, "bad-input")) return null;
    throw thrown;
  }
}

/** The mark as it is seen straight through the stone, then moved so that its centre lies at `at`. */
export function standAt(geometry: MarkGeometry, at: Point | null): MarkGeometry {
  const [x, y] = toOtherView([geometry.centreX, geometry.centreY]);
  const [dx, dy] = at === null ? [0, 0] : [at[0] - x, at[1] - y];
  return moveGeometry(geometry, { ...STRAIGHT_THROUGH, dx, dy });
}

/**
 * The images of a reference mark. A surface mark has none. An inside mark without a depth has one stand-in, straight
 * through the stone; one with a depth has a stand-in at each direct image in the other view, which may be none, and
 * echoes in both views, up to 3 bounces and down to a strength of 0.1.
 */
export function findMarkOptics(
  mark: ReferenceMark,
  geometry: MarkGeometry,
  isInside: boolean,
  solid: Solid,
  refractiveIndex: number,
): MarkOptics {
  if (!isInside) return { echoes: [], standIns: [] };
  const images = listImages(mark, geometry, solid, refractiveIndex);
  if (images === null) return { echoes: [], standIns: [{ geometry: standAt(geometry, null), facet: null }] };
  const nameFacets = (path: readonly number[]) => path.map((index) => solid.facets[index]?.name ?? "");
  const echoes: Echo[] = [];
  const standIns: StandIn[] = [];
  for (const { view, at, bounces, strength, path } of images) {
    if (bounces > 0) echoes.push({ view, at, bounces, strength, facets: nameFacets(path) });
    else if (view !== mark.view) {
      standIns.push({ geometry: standAt(geometry, at), facet: nameFacets(path)[0] ?? null });
    } else if (Math.hypot(at[0] - geometry.centreX, at[1] - geometry.centreY) > OWN_PLACE) {
      echoes.push({ view, at, bounces, strength, facets: nameFacets(path) });
    }
  }
  return { echoes, standIns };
}
