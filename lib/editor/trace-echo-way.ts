/** The way of the light behind an image: what one draws to show how it came about. */
import { type Point, toCrownPoint, type View } from "@/lib/gem/point";
import { reflectDirection, refractInward } from "@/lib/gem/refraction";
import type { Facet, Solid } from "@/lib/gem/solid";
import { advanceVec3, dotVec3, getLengthVec3, subtractVec3, type Vec3 } from "@/lib/gem/vec3";

/** The inclusion may lie this far off the line of sight (girdle widths): far below what can be drawn. */
const MISS_LIMIT = 1e-3;

/** An image to explain: where it is seen, and through which facets. */
export interface SeenImage {
  readonly view: View;
  /** In the view's frame. */
  readonly at: Point;
  /** Facet indices: the one looked through, then those that reflect (`StoneImage.path`). */
  readonly path: readonly number[];
}

/** Where a line meets a facet's plane; null for a line along the plane. */
function findMeeting(from: Vec3, direction: Vec3, { normal, offset }: Facet): Vec3 | null {
  const speed = dotVec3(normal, direction);
  if (Math.abs(speed) < 1e-12) return null;
  return advanceVec3(from, direction, (offset - dotVec3(normal, from)) / speed);
}

/** The corners of the line of sight: its entry, and where each mirror reflects it; null when it misses the inclusion. */
function traceCorners(
  entry: Facet,
  mirrors: readonly Facet[],
  { view, at }: SeenImage,
  inclusion: Vec3,
  refractiveIndex: number,
): Vec3[] | null {
  const [x, y] = toCrownPoint(view, at);
  const sight: Vec3 = [0, 0, view === "crown" ? -1 : 1];
  let direction = refractInward(sight, entry.normal, refractiveIndex);
  let corner = findMeeting([x, y, 0], sight, entry);
  if (direction === null || corner === null) return null;
  const corners = [corner];
  for (const mirror of mirrors) {
    corner = findMeeting(corner, direction, mirror);
    if (corner === null) return null;
    corners.push(corner);
    direction = reflectDirection(direction, mirror.normal);
  }
  const along = dotVec3(subtractVec3(inclusion, corner), direction);
  const miss = getLengthVec3(subtractVec3(advanceVec3(corner, direction, along), inclusion));
  return along >= -MISS_LIMIT && miss <= MISS_LIMIT ? corners : null;
}

/**
 * The line of sight from the eye to an inclusion (in the stone's frame): where it enters the stone, where each facet
 * of the path reflects it, and the inclusion itself, each straight down in the view's frame, girdle widths.
 *
 * Null when these facets do not lead from that place to the inclusion, as when the stone's numbers have changed since,
 * and for an empty path or a facet that the stone does not have.
 */
export function traceEchoWay(
  solid: Solid,
  image: SeenImage,
  inclusion: Vec3,
  refractiveIndex: number,
): Point[] | null {
  const facets = image.path.flatMap((index) => solid.facets[index] ?? []);
  const [entry, ...mirrors] = facets;
  if (entry === undefined || facets.length < image.path.length) return null;
  const corners = traceCorners(entry, mirrors, image, inclusion, refractiveIndex);
  return corners && [...corners, inclusion].map(([x, y]): Point => toCrownPoint(image.view, [x, y]));
}
