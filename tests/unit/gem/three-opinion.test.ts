import {
  BufferAttribute,
  BufferGeometry,
  DoubleSide,
  Mesh,
  MeshBasicMaterial,
  Raycaster,
  Vector3,
} from "three";
import { describe, expect, it } from "vitest";
import { createSeededRandom } from "@/lib/base/seeded-random";
import { buildSolid, type Solid } from "@/lib/gem/build-solid";
import { listCells, listCellsAt } from "@/lib/gem/cut-cells";
import { CUT_NAMES } from "@/lib/gem/cut-name";
import { findImages } from "@/lib/gem/find-images";
import { placeInclusion } from "@/lib/gem/place-inclusion";
import { toCrownPoint } from "@/lib/gem/point";
import { DIAMOND_INDEX } from "@/lib/gem/refraction";
import { findHit } from "@/lib/gem/trace-ray";
import { toUnitVec3, type Vec3 } from "@/lib/gem/vec3";
import { getMiss, type HitFinder, toMesh, traceDown } from "./mesh-tracer";

/** A second opinion from a general-purpose library: three's ray caster over a triangle mesh of the stone. */
const CUTS = CUT_NAMES.filter((cut) => cut !== "custom");
const GRAZING = 1e-4;

/** Finds hits with three's Raycaster; coordinates stay in double precision. */
function createThreeHit(solid: Solid): HitFinder {
  const { triangles } = toMesh(solid);
  const geometry = new BufferGeometry();
  const numbers = new Float64Array(triangles.flatMap(({ a, b, c }) => [...a, ...b, ...c]));
  geometry.setAttribute("position", new BufferAttribute(numbers, 3));
  const mesh = new Mesh(geometry, new MeshBasicMaterial({ side: DoubleSide }));
  const caster = new Raycaster();
  return (from, direction, entering) => {
    caster.set(new Vector3(...from), new Vector3(...direction));
    const hits = caster.intersectObject(mesh).filter(({ face, distance }) => {
      const across = face?.normal.dot(caster.ray.direction) ?? 0;
      return distance > -1e-9 && (entering ? across < -1e-12 : across > 1e-12);
    });
    const hit = hits[0];
    const triangle = triangles[hit?.faceIndex ?? -1];
    if (hit?.face === undefined || hit.face === null || triangle === undefined) return null;
    const { x, y, z } = hit.face.normal;
    const edge = new Vector3(...triangle.c).sub(new Vector3(...triangle.b));
    const clearance =
      hit.point
        .clone()
        .sub(new Vector3(...triangle.b))
        .cross(edge)
        .length() / edge.length();
    return { t: hit.distance, facet: triangle.facet, normal: [x, y, z], clearance };
  };
}

describe("three's ray caster", () => {
  it.each(CUTS)("meets the same facet of a %s at the same distance", (cut) => {
    const solid = buildSolid(cut);
    const findByThree = createThreeHit(solid);
    const random = createSeededRandom(`three ${cut}`);
    let compared = 0;
    for (let i = 0; i < 150; i += 1) {
      const corner = random.pick(solid.outline);
      const share = random.next() * 0.9;
      const from = placeInclusion(
        solid,
        "crown",
        [corner[0] * share, corner[1] * share],
        random.next(),
        DIAMOND_INDEX,
      );
      const direction: Vec3 = toUnitVec3([random.normal(), random.normal(), random.normal()]);
      const cell = listCellsAt(solid, from)[0] ?? listCells(solid)[0];
      const ours = cell === undefined ? null : findHit(solid, cell, from, direction);
      const theirs = findByThree(from, direction, false);
      expect(theirs).not.toBeNull();
      if (theirs === null || theirs.clearance < GRAZING) continue;
      expect(ours?.facetIndex).toBe(theirs.facet);
      expect(ours?.distance).toBeCloseTo(theirs.t, 9);
      compared += 1;
    }
    expect(compared).toBeGreaterThan(140);
  });

  it.each(CUTS)("confirms the images of an inclusion in a %s", (cut) => {
    const solid = buildSolid(cut);
    const findByThree = createThreeHit(solid);
    const at = placeInclusion(solid, "crown", [0.13, -0.08], 0.55, DIAMOND_INDEX);
    const images = findImages(solid, at, { refractiveIndex: DIAMOND_INDEX });
    let confirmed = 0;
    let grazing = 0;
    for (const image of images) {
      const [x, y] = toCrownPoint(image.view, image.at);
      const down = image.view === "crown" ? -1 : 1;
      const legs = traceDown(findByThree, down, x, y, DIAMOND_INDEX, image.bounces);
      const leg = legs[image.bounces];
      if (leg === undefined || leg.clearance < GRAZING) {
        grazing += 1;
        continue;
      }
      expect(leg.path).toEqual(image.path);
      const { t, miss, length } = getMiss(leg, at);
      expect(Math.hypot(...miss)).toBeLessThan(1e-7);
      expect(t > 0 && t < length).toBe(true);
      expect(leg.strength).toBeCloseTo(image.strength, 7);
      confirmed += 1;
    }
    expect(confirmed).toBeGreaterThanOrEqual(2);
    expect(grazing).toBeLessThanOrEqual(images.length / 10);
  });
});
