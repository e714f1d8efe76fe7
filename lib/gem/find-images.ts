import { listCells, listCellsAt } from "@/lib/gem/cut-cells";
import { type Point, VIEWS, type View } from "@/lib/gem/point";
import { reflectDirection, reflectPoint } from "@/lib/gem/refraction";
import type { Facet, Solid } from "@/lib/gem/solid";
import { type BeamLeg, type BeamLimits, spreadBeams } from "@/lib/gem/spread-beams";
import { findHit, GRAZE_TOLERANCE } from "@/lib/gem/trace-ray";
import { advanceVec3, dotVec3, getLengthVec3, subtractVec3, type Vec3 } from "@/lib/gem/vec3";

/** One image of an inclusion in a view. */
export interface StoneImage {
  readonly view: View;
  /** In the view's frame, to nine decimals. */
  readonly at: Point;
  /** 0 for the inclusion itself, seen through one facet; else how many facets reflected it. */
  readonly bounces: number;
  /** Product of the unpolarised reflectances along the way, 1 for the direct image; to nine decimals. */
  readonly strength: number;
  /** Facet indices: the one looked through, then those that reflect, in the order of the line of sight. */
  readonly path: readonly number[];
}

export interface ImageOptions {
  readonly refractiveIndex: number;
  /** Reflections to follow, 3 unless given. */
  readonly maxBounces?: number;
  /** Images weaker than this are dropped, 0.1 unless given. */
  readonly minStrength?: number;
}

/** The inclusion may lie this far (girdle widths) off the traced ray. */
const PATH_TOLERANCE = 1e-7;
/** A point this far outside a beam's section still counts: the ray itself decides. */
const SECTION_TOLERANCE = 1e-9;
const KEPT_BEAMS = 6;

/** The beams of both views, and their frames and boxes in one array for a quick search. */
interface BeamIndex {
  readonly legs: readonly BeamLeg[];
  /** Ten numbers for each leg: u, v, and the box of its section. */
  readonly quick: Float64Array;
}

const beamsOfSolids = new WeakMap<Solid, Map<string, BeamIndex>>();

/** The beams of both views, remembered with the solid for the last few sets of limits. */
function getBeams(solid: Solid, limits: BeamLimits): BeamIndex {
  const key = `${limits.refractiveIndex}/${limits.maxBounces}/${limits.minStrength}`;
  const kept = beamsOfSolids.get(solid) ?? new Map<string, BeamIndex>();
  beamsOfSolids.set(solid, kept);
  const known = kept.get(key);
  if (known !== undefined) return known;
  const legs = VIEWS.flatMap((view) => spreadBeams(solid, view, limits));
  const beams = { legs, quick: new Float64Array(legs.flatMap(({ u, v, box }) => [...u, ...v, ...box])) };
  kept.set(key, beams);
  const oldest = kept.keys().next().value;
  if (kept.size > KEPT_BEAMS && oldest !== undefined) kept.delete(oldest);
  return beams;
}

/** The legs whose box holds the point. */
function listLegsNear({ legs, quick }: BeamIndex, [x, y, z]: Vec3): BeamLeg[] {
  const e = SECTION_TOLERANCE;
  const read = (i: number) => quick[i] as number;
  return legs.filter((_, leg) => {
    const i = 10 * leg;
    const a = read(i) * x + read(i + 1) * y + read(i + 2) * z;
    if (a < read(i + 6) - e || a > read(i + 7) + e) return false;
    const b = read(i + 3) * x + read(i + 4) * y + read(i + 5) * z;
    return b >= read(i + 8) - e && b <= read(i + 9) + e;
  });
}

function isLit(leg: BeamLeg, at: Vec3): boolean {
  const a = dotVec3(leg.u, at);
  const b = dotVec3(leg.v, at);
  let [px, py] = leg.section[leg.section.length - 1] as Point;
  for (const [x, y] of leg.section) {
    const [dx, dy] = [x - px, y - py];
    if (dx * (b - py) - dy * (a - px) < -SECTION_TOLERANCE * Math.sqrt(dx * dx + dy * dy)) return false;
    [px, py] = [x, y];
  }
  return true;
}

function getFacet(solid: Solid, index: number): Facet {
  const facet = solid.facets[index];
  if (facet === undefined) throw new RangeError(`getFacet: there is no facet ${index}`);
  return facet;
}

/**
 * Where the line of sight enters: the inclusion, mirrored in the reflecting facets from the last to the first,
 * lies straight ahead of the entry point.
 */
function unfoldEntry(solid: Solid, leg: BeamLeg, at: Vec3): Vec3 | null {
  const [entry, ...mirrors] = leg.path;
  if (entry === undefined) return null;
  let image = at;
  for (const index of mirrors.reverse()) {
    const mirror = getFacet(solid, index);
    image = reflectPoint(image, mirror.normal, mirror.offset);
  }
  const { normal, offset } = getFacet(solid, entry);
  const back = (offset - dotVec3(normal, image)) / dotVec3(normal, leg.entryDirection);
  return advanceVec3(image, leg.entryDirection, back);
}

/** Follows the line of sight from its entry and asks whether it meets the path's facets and then the inclusion. */
function isConfirmed(solid: Solid, leg: BeamLeg, entry: Vec3, at: Vec3): boolean {
  const mirrors = leg.path.slice(1);
  const onEntry = solid.isCleft && getFacet(solid, leg.path[0] as number).lobe === "both";
  let cell = onEntry ? listCellsAt(solid, entry)[0] : listCells(solid).find(hasFacet(leg.path[0] as number));
  let from = entry;
  let direction = leg.entryDirection;
  for (const index of mirrors) {
    const hit = cell === undefined ? null : findHit(solid, cell, from, direction, index);
    if (hit === null || hit.facetIndex !== index) return false;
    from = hit.at;
    cell = hit.cell;
    direction = reflectDirection(direction, getFacet(solid, index).normal);
  }
  const along = dotVec3(subtractVec3(at, from), direction);
  const miss = getLengthVec3(subtractVec3(advanceVec3(from, direction, along), at));
  const end = cell === undefined ? null : findHit(solid, cell, from, direction);
  return (
    end !== null && miss < PATH_TOLERANCE && along > -GRAZE_TOLERANCE && along < end.distance + PATH_TOLERANCE
  );
}

function hasFacet(facetIndex: number) {
  return (cell: { faces: readonly { facetIndex: number }[] }) =>
    cell.faces.some((face) => face.facetIndex === facetIndex);
}

function roundTo9(value: number): number {
  return Math.round(value * 1e9) / 1e9 + 0;
}

function compareImages(a: StoneImage, b: StoneImage): number {
  if (a.view !== b.view) return VIEWS.indexOf(a.view) - VIEWS.indexOf(b.view);
  if (a.bounces !== b.bounces) return a.bounces - b.bounces;
  if (a.strength !== b.strength) return b.strength - a.strength;
  if (a.at[0] !== b.at[0]) return a.at[0] - b.at[0];
  if (a.at[1] !== b.at[1]) return a.at[1] - b.at[1];
  return a.path.join() < b.path.join() ? -1 : 1;
}

/**
 * Every image of a point inclusion, in both views, for an eye far away that looks straight down on the view
 * (parallel rays): the direct images (bounces 0, one for each facet that it can be seen through) and those
 * reflected by facets. Sorted by view, bounces, falling strength, then place.
 *
 * Each facet refracts all the rays that it takes in alike, so the light of a view is followed once as beams
 * (`spreadBeams`, remembered with the solid); an inclusion has an image in each beam that it lies in, found
 * exactly by mirroring the inclusion in the facets of the path, and confirmed by tracing one ray. A ray that
 * meets an edge counts for the facets on both sides. For a cleft stone (heart) this holds for all light that
 * stays within the stone; light that leaves by the cleft and enters again is not followed. A point outside the
 * stone has no images.
 */
export function findImages(solid: Solid, at: Vec3, options: ImageOptions): StoneImage[] {
  const limits = {
    refractiveIndex: options.refractiveIndex,
    maxBounces: options.maxBounces ?? 3,
    minStrength: options.minStrength ?? 0.1,
  };
  const cells = listCellsAt(solid, at);
  const images = new Map<string, StoneImage>();
  for (const leg of listLegsNear(getBeams(solid, limits), at)) {
    if (!cells.includes(leg.cell) || !isLit(leg, at)) continue;
    const key = `${leg.view}:${leg.path.join()}`;
    const entry = images.has(key) ? null : unfoldEntry(solid, leg, at);
    if (entry === null || !isConfirmed(solid, leg, entry, at)) continue;
    const x = roundTo9(entry[0]);
    images.set(key, {
      view: leg.view,
      at: [leg.view === "crown" ? x : 0 - x, roundTo9(entry[1])],
      bounces: leg.bounces,
      strength: roundTo9(leg.strength),
      path: leg.path,
    });
  }
  return [...images.values()].sort(compareImages);
}

/** The direct images of a point inclusion alone: bounces 0, in both views. Sorted as `findImages`. */
export function findDirectImages(solid: Solid, at: Vec3, refractiveIndex: number): StoneImage[] {
  return findImages(solid, at, { refractiveIndex, maxBounces: 0 });
}
