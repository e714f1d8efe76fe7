import {
  type Box,
  getSectionArea,
  getSectionBox,
  intersectSection,
  isBesideBox,
} from "@/lib/gem/beam-section";
import { type Cell, type CellFace, getOtherCell, listCells, WALL } from "@/lib/gem/cut-cells";
import type { Point, View } from "@/lib/gem/point";
import { getReflectance, reflectDirection, refractInward } from "@/lib/gem/refraction";
import type { Solid } from "@/lib/gem/solid";
import { crossVec3, dotVec3, toUnitVec3, type Vec3 } from "@/lib/gem/vec3";

/**
 * One straight leg of a beam: all the parallel light that entered by one facet and has been reflected by the
 * same facets in the same order. Seen along its direction a leg is a convex polygon, and in a convex cell every
 * point of the cell within that polygon is lit by it.
 */
export interface BeamLeg {
  readonly view: View;
  readonly cell: Cell;
  /** The facet by which the light came in, then those that reflected it. */
  readonly path: readonly number[];
  readonly bounces: number;
  /** Product of the reflectances so far; 1 before the first. */
  readonly strength: number;
  readonly direction: Vec3;
  /** The direction of the first leg, inside the stone. */
  readonly entryDirection: Vec3;
  readonly u: Vec3;
  readonly v: Vec3;
  /** In the frame (u, v), counter-clockwise. */
  readonly section: readonly Point[];
  /** Round the section. */
  readonly box: Box;
}

/** How far to follow the light. */
export interface BeamLimits {
  readonly refractiveIndex: number;
  readonly maxBounces: number;
  readonly minStrength: number;
}

/** Sections smaller than this (square girdle widths) are the width of an edge and are dropped. */
const LEAST_AREA = 1e-12;
/** The wall of a cleft stone is passed at most this often between two reflections. */
const MOST_WALLS = 2;

function getFrame(direction: Vec3): { u: Vec3; v: Vec3 } {
  const helper: Vec3 = Math.abs(direction[2]) > 0.7 ? [1, 0, 0] : [0, 0, 1];
  const u = toUnitVec3(crossVec3(helper, direction));
  return { u, v: crossVec3(direction, u) };
}

/** A section lifted along the direction onto a face's plane. */
function liftSection(section: readonly Point[], leg: BeamLeg, face: CellFace): Vec3[] {
  const { u, v, direction } = leg;
  const speed = dotVec3(face.normal, direction);
  return section.map(([a, b]) => {
    const base: Vec3 = [a * u[0] + b * v[0], a * u[1] + b * v[1], a * u[2] + b * v[2]];
    const t = (face.offset - dotVec3(face.normal, base)) / speed;
    return [base[0] + direction[0] * t, base[1] + direction[1] * t, base[2] + direction[2] * t];
  });
}

type Start = Omit<BeamLeg, "u" | "v" | "section" | "box">;

/** A leg that sets out from a polygon on a face, given counter-clockwise from outside; null when too thin. */
function toLeg(start: Start, polygon: readonly Vec3[]): BeamLeg | null {
  const { u, v } = getFrame(start.direction);
  // The light leaves the face inward, so along its direction the corners run clockwise: turn them round.
  const section: Point[] = [];
  for (let i = polygon.length - 1; i >= 0; i -= 1) {
    const corner = polygon[i] as Vec3;
    section.push([dotVec3(u, corner), dotVec3(v, corner)]);
  }
  if (getSectionArea(section) < LEAST_AREA) return null;
  const { view, cell, path, bounces, strength, direction, entryDirection } = start;
  // Written out: copying by spread made half of the running time.
  return {
    view,
    cell,
    path,
    bounces,
    strength,
    direction,
    entryDirection,
    u,
    v,
    section,
    box: getSectionBox(section),
  };
}

/** What becomes of the part of a leg that meets one face: the reflected leg, or the leg beyond a wall. */
function followTo(solid: Solid, leg: BeamLeg, face: CellFace, met: readonly Point[], limits: BeamLimits) {
  if (face.facetIndex === WALL) {
    return { ...leg, cell: getOtherCell(solid, leg.cell), section: met, box: getSectionBox(met) };
  }
  if (leg.bounces >= limits.maxBounces) return null;
  const reflectance = getReflectance(dotVec3(face.normal, leg.direction), limits.refractiveIndex);
  const strength = leg.strength * reflectance;
  if (strength < limits.minStrength) return null;
  const start: Start = {
    view: leg.view,
    cell: leg.cell,
    path: [...leg.path, face.facetIndex],
    bounces: leg.bounces + 1,
    strength,
    direction: reflectDirection(leg.direction, face.normal),
    entryDirection: leg.entryDirection,
  };
  return toLeg(start, liftSection(met, leg, face));
}

/** The cell's vertices along the leg, as [u0, v0, u1, v1, …]. */
function castVertices({ cell, u, v }: BeamLeg): Float64Array {
  const { vertices } = cell;
  const cast = new Float64Array(2 * vertices.length);
  for (let i = 0; i < vertices.length; i += 1) {
    const vertex = vertices[i] as Vec3;
    cast[2 * i] = u[0] * vertex[0] + u[1] * vertex[1] + u[2] * vertex[2];
    cast[2 * i + 1] = v[0] * vertex[0] + v[1] * vertex[1] + v[2] * vertex[2];
  }
  return cast;
}

function spread(solid: Solid, leg: BeamLeg, walls: number, limits: BeamLimits, out: BeamLeg[]): void {
  out.push(leg);
  if (leg.bounces >= limits.maxBounces && leg.cell.lobe === "both") return;
  const cast = castVertices(leg);
  const { faces } = leg.cell;
  for (let i = 0; i < faces.length; i += 1) {
    const face = faces[i] as CellFace;
    if (dotVec3(face.normal, leg.direction) <= 1e-9) continue;
    if (face.facetIndex === WALL && walls >= MOST_WALLS) continue;
    if (isBesideBox(face.ring, cast, leg.box)) continue;
    const met = intersectSection(leg.section, face.ring, cast);
    if (met.length < 3 || getSectionArea(met) < LEAST_AREA) continue;
    const next = followTo(solid, leg, face, met, limits);
    if (next !== null) spread(solid, next, face.facetIndex === WALL ? walls + 1 : 0, limits, out);
  }
}

/**
 * All the light that comes straight down on a view (parallel rays along -z for the crown, +z for the pavilion),
 * followed through the stone as beams with sharp borders: refracted at the facet of entry, reflected up to
 * `maxBounces` times, dropped where the product of the reflectances falls below `minStrength`. Facets that a
 * beam does not reach are never looked at again. The legs do not depend on any inclusion.
 */
export function spreadBeams(solid: Solid, view: View, limits: BeamLimits): BeamLeg[] {
  const sight: Vec3 = [0, 0, view === "crown" ? -1 : 1];
  const out: BeamLeg[] = [];
  for (const cell of listCells(solid)) {
    for (const face of cell.faces) {
      if (face.facetIndex === WALL || dotVec3(face.normal, sight) > -1e-9) continue;
      const direction = refractInward(sight, face.normal, limits.refractiveIndex);
      if (direction === null) continue;
      const start: Start = {
        view,
        cell,
        path: [face.facetIndex],
        bounces: 0,
        strength: 1,
        direction,
        entryDirection: direction,
      };
      const leg = toLeg(
        start,
        face.ring.map((index) => cell.vertices[index] as Vec3),
      );
      if (leg !== null) spread(solid, leg, 0, limits, out);
    }
  }
  return out;
}
