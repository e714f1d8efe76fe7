import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isAppError } from "@/lib/base/app-error";
import { buildSolid, type Solid } from "@/lib/gem/build-solid";
import { CUT_NAMES, type CutName } from "@/lib/gem/cut-name";
import { CUT_RULES } from "@/lib/gem/cut-rules";
import { findImages } from "@/lib/gem/find-images";
import { locatePoint } from "@/lib/gem/locate-point";
import { placeInclusion } from "@/lib/gem/place-inclusion";
import { type Point, VIEWS } from "@/lib/gem/point";
import type { Proportions } from "@/lib/gem/proportions";
import { crossVec3, dotVec3, subtractVec3, type Vec3 } from "@/lib/gem/vec3";

const CUTS = CUT_NAMES.filter((cut) => cut !== "custom");
const WHOLE = new Set(["chevrons", "crownSteps", "pavilionSteps"]);

/** Evenly spread over the range: fast-check's own doubles favour its ends, where numbers seldom fit together. */
function spread(min: number, max: number): fc.Arbitrary<number> {
  return fc.integer({ min: 0, max: 997 }).map((step) => min + ((max - min) * step) / 997);
}

/** Any numbers within a cut's ranges, at the ends of the ranges too. */
function arbitraryProportions(cut: CutName): fc.Arbitrary<Proportions> {
  const entries = Object.entries(CUT_RULES[cut]).map(([key, { min, max }]) => {
    const value = WHOLE.has(key)
      ? fc.integer({ min, max })
      : fc.oneof({ weight: 9, arbitrary: spread(min, max) }, fc.constantFrom(min, max));
    return [key, value] as const;
  });
  return fc.record(Object.fromEntries(entries), { requiredKeys: [] }) as fc.Arbitrary<Proportions>;
}

/** The solid, or null when it is refused as it should be: with a reason and a key of the proportions. */
function tryBuild(cut: CutName, proportions: Proportions): Solid | null {
  try {
    return buildSolid(cut, proportions);
  } catch (thrown) {
    if (!isAppError(thrown, "bad-input")) throw thrown;
    expect(thrown.faults.length).toBeGreaterThan(0);
    for (const fault of thrown.faults) expect(fault.path).toMatch(/^[a-z][A-Za-z]+$/);
    return null;
  }
}

function getCorners(solid: Solid, ring: readonly number[]): Vec3[] {
  return ring.map((index) => solid.vertices[index] as Vec3);
}

function checkClosed(solid: Solid): void {
  const edges = new Map<string, number>();
  for (const { vertices } of solid.facets) {
    vertices.forEach((from, i) => {
      const key = `${from}-${vertices[(i + 1) % vertices.length]}`;
      edges.set(key, (edges.get(key) ?? 0) + 1);
    });
  }
  for (const [key, times] of edges) {
    expect(times).toBe(1);
    expect(edges.has(key.split("-").reverse().join("-")), `edge ${key} has a facet on one side only`).toBe(
      true,
    );
  }
  expect(solid.vertices.length - edges.size / 2 + solid.facets.length).toBe(2); // Euler
}

function checkFacets(solid: Solid): void {
  let [worstUnit, leastArea, worstOwn, worstOther] = [0, Infinity, 0, -Infinity];
  for (const { vertices: ring, normal, offset, lobe } of solid.facets) {
    worstUnit = Math.max(worstUnit, Math.abs(dotVec3(normal, normal) - 1));
    const corners = getCorners(solid, ring);
    const first = corners[0] as Vec3;
    let area = 0;
    corners.forEach((corner, i) => {
      const next = corners[(i + 1) % corners.length] as Vec3;
      area += dotVec3(normal, crossVec3(subtractVec3(corner, first), subtractVec3(next, first))) / 2;
      worstOwn = Math.max(worstOwn, Math.abs(dotVec3(normal, corner) - offset));
    });
    leastArea = Math.min(leastArea, area);
    for (const vertex of solid.vertices) {
      if ((lobe === "right" && vertex[0] < 0) || (lobe === "left" && vertex[0] > 0)) continue;
      worstOther = Math.max(worstOther, dotVec3(normal, vertex) - offset);
    }
  }
  expect(worstUnit).toBeLessThan(1e-12);
  expect(leastArea, "counter-clockwise from outside").toBeGreaterThan(0);
  expect(worstOwn, "a facet is flat").toBeLessThan(1e-6);
  expect(worstOther, "every plane holds the whole solid").toBeLessThan(1e-6);
}

describe.each(CUTS)("any %s", (cut) => {
  it("is a closed solid whose planes hold all of it, or is refused with a reason", () => {
    let built = 0;
    fc.assert(
      fc.property(arbitraryProportions(cut), (proportions) => {
        const solid = tryBuild(cut, proportions);
        if (solid === null) return;
        built += 1;
        checkClosed(solid);
        checkFacets(solid);
        expect(solid.crownHeight).toBeGreaterThan(0);
        expect(solid.pavilionDepth).toBeGreaterThan(0);
        expect(solid.girdleThickness).toBeCloseTo((solid.proportions.girdlePct ?? 0) / 100, 9);
        for (const vertex of solid.vertices)
          for (const value of vertex) expect(Number.isFinite(value)).toBe(true);
      }),
      { numRuns: 60, seed: 20261125 },
    );
    expect(built).toBeGreaterThan(20);
  });

  it("keeps the shapes of its facets whatever its numbers", () => {
    const shapes = new Set<string>();
    fc.assert(
      fc.property(arbitraryProportions(cut), (proportions) => {
        const solid = tryBuild(cut, { ...proportions, girdlePct: 3, culetPct: 0 });
        if (solid === null) return;
        const stars = solid.facets
          .filter((facet) => facet.kind === "star")
          .map((facet) => facet.vertices.length);
        shapes.add([...new Set(stars)].join());
      }),
      { numRuns: 40, seed: 7 },
    );
    for (const shape of shapes) expect(["", "3"]).toContain(shape);
  });

  it("has images for whatever is drawn on it, without NaN", () => {
    const standard = buildSolid(cut);
    fc.assert(
      fc.property(
        fc.constantFrom(...VIEWS),
        fc.nat({ max: standard.outline.length - 1 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.constantFrom(1.544, 2.417), // quartz (from memory) and diamond
        (view, corner, share, depth, refractiveIndex) => {
          const [x, y] = standard.outline[corner] as Point;
          const point: Point = [x * share * (view === "crown" ? 1 : -1), y * share];
          expect(locatePoint(standard, view, point).facetIndex).not.toBeNull();
          const at = placeInclusion(standard, view, point, depth, refractiveIndex);
          const images = findImages(standard, at, { refractiveIndex, maxBounces: 2 });
          expect(images.some((image) => image.view === view && image.bounces === 0)).toBe(true);
          const isSound = images.every(
            (image) =>
              [...image.at, image.strength].every(Number.isFinite) &&
              locatePoint(standard, image.view, image.at).facetIndex !== null,
          );
          expect(isSound).toBe(true);
        },
      ),
      { numRuns: 15, seed: 3 },
    );
  });
});
