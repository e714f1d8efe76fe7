import { describe, expect, it } from "vitest";
import { createSeededRandom } from "@/lib/base/seeded-random";
import { buildSolid, type Solid } from "@/lib/gem/build-solid";
import type { CutName } from "@/lib/gem/cut-name";
import { findDirectImages, findImages, type StoneImage } from "@/lib/gem/find-images";
import { findSymmetryTurns } from "@/lib/gem/find-symmetry-turns";
import { placeInclusion } from "@/lib/gem/place-inclusion";
import { toCrownPoint, turnPoint, VIEWS, type View } from "@/lib/gem/point";
import { DIAMOND_INDEX } from "@/lib/gem/refraction";
import type { Vec3 } from "@/lib/gem/vec3";
import { getMiss, hitMesh, type Leg, type Mesh, toMesh, traceDown } from "./mesh-tracer";

const OPTIONS = { refractiveIndex: DIAMOND_INDEX };
/** A ray that comes this near to a facet's edge is not compared: the two tracers may take different sides. */
const GRAZING = 1e-4;

const getDown = (view: View) => (view === "crown" ? -1 : 1);

function findLeg(mesh: Mesh, image: StoneImage): Leg | undefined {
  const [x, y] = toCrownPoint(image.view, image.at);
  const legs = traceDown(mesh, getDown(image.view), x, y, DIAMOND_INDEX, image.bounces);
  return legs.find((leg) => leg.path.join() === image.path.join());
}

/** Moves a ray's entry until its leg of this path meets the inclusion: the miss is linear in the entry. */
function aim(mesh: Mesh, view: View, leg: Leg, start: readonly [number, number], at: Vec3) {
  const bounces = leg.path.length - 1;
  const trace = (x: number, y: number) =>
    traceDown(mesh, getDown(view), x, y, DIAMOND_INDEX, bounces).find(
      (other) => other.path.join() === leg.path.join(),
    );
  let [x, y] = start;
  for (let round = 0; round < 3; round += 1) {
    const h = 1e-6;
    const [here, right, up] = [trace(x, y), trace(x + h, y), trace(x, y + h)];
    if (here === undefined || right === undefined || up === undefined) return null;
    const miss = getMiss(here, at).miss;
    const dx = getMiss(right, at).miss.map((value, i) => (value - (miss[i] ?? 0)) / h);
    const dy = getMiss(up, at).miss.map((value, i) => (value - (miss[i] ?? 0)) / h);
    const dot = (a: readonly number[], b: readonly number[]) =>
      a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);
    const [xx, xy, yy] = [dot(dx, dx), dot(dx, dy), dot(dy, dy)];
    const [bx, by] = [-dot(dx, miss), -dot(dy, miss)];
    const det = xx * yy - xy * xy;
    x += (bx * yy - by * xy) / det;
    y += (by * xx - bx * xy) / det;
  }
  const last = trace(x, y);
  if (last === undefined) return null;
  const { t, miss, length } = getMiss(last, at);
  return Math.hypot(...miss) < 1e-6 && t > 0 && t < length ? { x, y, leg: last } : null;
}

/** Images by brute force: a grid of rays, and those legs that pass near the inclusion aimed at it. */
function searchImages(solid: Solid, at: Vec3, steps: number) {
  const mesh = toMesh(solid);
  const found = new Map<string, { view: View; x: number; y: number; leg: Leg }>();
  const reach = Math.max(...solid.outline.map(([, y]) => Math.abs(y)));
  for (const view of VIEWS) {
    for (let i = 0; i < steps; i += 1) {
      for (let j = 0; j < steps; j += 1) {
        const x = ((i + 0.37) / steps - 0.5) * 1;
        const y = ((j + 0.61) / steps - 0.5) * 2 * reach;
        for (const leg of traceDown(mesh, getDown(view), x, y, DIAMOND_INDEX, 3)) {
          const key = `${view}:${leg.path.join()}`;
          const { t, miss, length } = getMiss(leg, at);
          if (
            found.has(key) ||
            leg.strength < 0.1 ||
            Math.hypot(...miss) > 0.03 ||
            t < -0.05 ||
            t > length + 0.05
          )
            continue;
          const aimed = aim(mesh, view, leg, [x, y], at);
          if (aimed !== null) found.set(key, { view, ...aimed });
        }
      }
    }
  }
  return found;
}

const PLACES: readonly [CutName, Vec3][] = [
  ["round-brilliant", [0.11, 0.04, -0.07]],
  ["round-brilliant", [-0.21, 0.13, 0.02]],
  ["round-brilliant", [0.03, -0.31, -0.02]],
  ["oval", [0.07, 0.22, -0.12]],
  ["pear", [-0.13, -0.05, -0.1]],
  ["heart", [0.17, 0.12, -0.05]],
  ["princess", [0.19, -0.08, -0.11]],
  ["emerald", [-0.15, 0.28, -0.06]],
  ["radiant", [0.06, -0.2, -0.14]],
];

describe("images of an inclusion", () => {
  it.each(PLACES)("of a %s agree with a ray tracer over triangles, inclusion at %o", (cut, at) => {
    const solid = buildSolid(cut);
    const mesh = toMesh(solid);
    const images = findImages(solid, at, OPTIONS);
    const byPath = new Map(images.map((image) => [`${image.view}:${image.path.join()}`, image]));
    expect(images.length).toBeGreaterThan(3);
    for (const image of images) {
      const leg = findLeg(mesh, image);
      if (leg === undefined || leg.clearance < GRAZING) continue;
      const { t, miss, length } = getMiss(leg, at);
      expect(Math.hypot(...miss)).toBeLessThan(1e-7);
      expect(t).toBeGreaterThan(0);
      expect(t).toBeLessThan(length + 1e-9);
      expect(leg.strength).toBeCloseTo(image.strength, 7);
    }
    const confirmed = images.filter((image) => findLeg(mesh, image) !== undefined);
    expect(images.length - confirmed.length).toBeLessThanOrEqual(images.length / 20);
    for (const [key, { x, y, leg }] of searchImages(solid, at, 48)) {
      const image = byPath.get(key);
      if (image === undefined) expect(leg.clearance, `only the tracer has ${key}`).toBeLessThan(GRAZING);
      else {
        const [ix, iy] = toCrownPoint(image.view, image.at);
        expect(Math.hypot(ix - x, iy - y)).toBeLessThan(1e-6);
      }
    }
  });

  // Common practice, no source: an inclusion on the axis near the culet is repeated all round the stone.
  it.each(["round-brilliant", "oval", "princess", "square-emerald"] as const)(
    "on the axis of a %s near the culet are repeated with the stone's own symmetry",
    (cut) => {
      const solid = buildSolid(cut);
      const lowest = Math.min(...solid.vertices.map(([, , z]) => z));
      const images = findImages(solid, [0, 0, lowest * 0.8], OPTIONS);
      const turns = findSymmetryTurns(solid);
      for (const image of images) {
        for (const turn of turns) {
          const [x, y] = turnPoint(image.view, image.at, turn);
          const partner = images.find(
            (other) =>
              other.view === image.view &&
              other.bounces === image.bounces &&
              Math.hypot(other.at[0] - x, other.at[1] - y) < 1e-6,
          );
          expect(partner?.strength).toBeCloseTo(image.strength, 6);
        }
      }
      // The culet's own reflection lies in the middle and is its own partner.
      const rings = images.filter(
        (image) => image.view === "crown" && image.bounces === 1 && Math.hypot(...image.at) > 1e-6,
      );
      expect(rings.length).toBeGreaterThanOrEqual(turns.length);
      expect(rings.length % turns.length).toBe(0);
    },
  );

  it("give their path back when the light runs the other way", () => {
    const solid = buildSolid("round-brilliant");
    const mesh = toMesh(solid);
    const at: Vec3 = [0.11, 0.04, -0.07];
    let reversed = 0;
    for (const image of findImages(solid, at, OPTIONS)) {
      const leg = findLeg(mesh, image);
      if (leg === undefined || leg.clearance < GRAZING) continue;
      let from = at;
      let direction: Vec3 = [-leg.direction[0], -leg.direction[1], -leg.direction[2]];
      for (const facet of [...image.path].reverse()) {
        const hit = hitMesh(mesh, from, direction, false);
        expect(hit?.facet).toBe(facet);
        if (hit === null) break;
        from = [
          from[0] + direction[0] * hit.t,
          from[1] + direction[1] * hit.t,
          from[2] + direction[2] * hit.t,
        ];
        const across =
          direction[0] * hit.normal[0] + direction[1] * hit.normal[1] + direction[2] * hit.normal[2];
        const flat = direction.map((value, i) => value - across * (hit.normal[i] as number));
        if (facet === image.path[0]) {
          // Out of the stone: what runs along the facet grows by the index, and the rest makes up the length.
          const out = flat.map((value) => value * DIAMOND_INDEX);
          const rest = Math.sqrt(1 - out.reduce((sum, value) => sum + value * value, 0));
          const exit = out.map((value, i) => value + rest * (hit.normal[i] as number));
          expect(exit[2]).toBeCloseTo(image.view === "crown" ? 1 : -1, 7);
          reversed += 1;
        }
        direction = [
          direction[0] - 2 * across * hit.normal[0],
          direction[1] - 2 * across * hit.normal[1],
          direction[2] - 2 * across * hit.normal[2],
        ];
      }
      const [x, y] = toCrownPoint(image.view, image.at);
      expect(Math.hypot(from[0] - x, from[1] - y)).toBeLessThan(1e-6);
    }
    expect(reversed).toBeGreaterThanOrEqual(20);
  });

  it("are sorted by view, bounces and falling strength, and keep to the limits", () => {
    const images = findImages(buildSolid("round-brilliant"), [0.05, 0.1, -0.1], OPTIONS);
    const keys = images.map(
      ({ view, bounces, strength }) => [VIEWS.indexOf(view), bounces, -strength] as const,
    );
    const sorted = [...keys].sort((a, b) => a[0] - b[0] || a[1] - b[1] || a[2] - b[2]);
    expect(keys).toEqual(sorted);
    for (const { bounces, strength } of images) {
      expect(bounces).toBeLessThanOrEqual(3);
      expect(strength).toBeGreaterThanOrEqual(0.1);
      expect(strength).toBeLessThanOrEqual(1);
    }
    for (const image of images.filter(({ bounces }) => bounces === 0)) expect(image.strength).toBe(1);
  });

  it("grow with the bounces that are followed, the shorter paths staying the same", () => {
    const solid = buildSolid("round-brilliant");
    const at: Vec3 = [0.05, 0.1, -0.1];
    const weak = { ...OPTIONS, minStrength: 0.01 };
    const four = findImages(solid, at, { ...weak, maxBounces: 4 });
    const three = findImages(solid, at, { ...weak, maxBounces: 3 });
    expect(four.length).toBeGreaterThan(three.length);
    expect(four.filter(({ bounces }) => bounces <= 3)).toEqual(three);
    expect(three.filter(({ bounces }) => bounces === 0)).toEqual(findDirectImages(solid, at, DIAMOND_INDEX));
  });

  it("are none for a point outside the stone", () => {
    expect(findImages(buildSolid("round-brilliant"), [0, 0, 0.4], OPTIONS)).toEqual([]);
  });
});

describe("placing an inclusion", () => {
  it.each(["round-brilliant", "marquise", "heart", "princess", "baguette"] as const)(
    "in a %s puts its direct image back where the mark was drawn",
    (cut) => {
      const solid = buildSolid(cut);
      const random = createSeededRandom(`place ${cut}`);
      for (let i = 0; i < 40; i += 1) {
        const view = random.pick(VIEWS);
        const corner = random.pick(solid.outline);
        const share = random.next() * 0.95;
        const point = [corner[0] * share * (view === "crown" ? 1 : -1), corner[1] * share] as const;
        const at = placeInclusion(solid, view, point, random.next(), DIAMOND_INDEX);
        const direct = findDirectImages(solid, at, DIAMOND_INDEX).filter((image) => image.view === view);
        const nearest = Math.min(
          ...direct.map((image) => Math.hypot(image.at[0] - point[0], image.at[1] - point[1])),
        );
        expect(nearest).toBeLessThan(1e-6);
      }
    },
  );

  it("runs from the surface that is looked through to the one behind", () => {
    const solid = buildSolid("round-brilliant");
    const top = placeInclusion(solid, "crown", [0.1, 0], 0, DIAMOND_INDEX);
    const bottom = placeInclusion(solid, "crown", [0.1, 0], 1, DIAMOND_INDEX);
    const middle = placeInclusion(solid, "crown", [0.1, 0], 0.5, DIAMOND_INDEX);
    const table = solid.girdleThickness / 2 + solid.crownHeight;
    expect(top[2]).toBeCloseTo(table, 4);
    // Straight down through the table to the pavilion main, which lies (0.5 - 0.1) tan p below the girdle.
    expect(bottom[2]).toBeCloseTo(-solid.girdleThickness / 2 - 0.4 * Math.tan((40.8 * Math.PI) / 180), 4);
    expect(middle[2]).toBeCloseTo((top[2] + bottom[2]) / 2, 9);
    const below = placeInclusion(solid, "pavilion", [-0.1, 0], 0, DIAMOND_INDEX);
    expect(below[0]).toBeCloseTo(0.1, 4);
    expect(below[2]).toBeCloseTo(bottom[2], 4);
  });

  it("takes a mark at the very girdle, and refuses one outside it", () => {
    const solid = buildSolid("round-brilliant");
    const at = placeInclusion(
      solid,
      "crown",
      [0.5 * Math.sin(0.19), 0.5 * Math.cos(0.19)],
      0.5,
      DIAMOND_INDEX,
    );
    expect(at.every(Number.isFinite)).toBe(true);
    expect(() => placeInclusion(solid, "crown", [0.52, 0], 0.5, DIAMOND_INDEX)).toThrow(/girdle/);
  });
});
