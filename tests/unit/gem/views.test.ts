import { describe, expect, it } from "vitest";
import { isAppError } from "@/lib/base/app-error";
import { buildSolid } from "@/lib/gem/build-solid";
import { CUT_LABELS, CUT_NAMES, isCutName } from "@/lib/gem/cut-name";
import { drawProfile } from "@/lib/gem/draw-profile";
import { drawView } from "@/lib/gem/draw-view";
import { findSymmetryTurns } from "@/lib/gem/find-symmetry-turns";
import { getRimShare, isInsideOutline } from "@/lib/gem/is-inside-outline";
import { locatePoint, toKindWords } from "@/lib/gem/locate-point";
import { fromClockDeg, type Point, toClockDeg, toOtherView, turnPoint, VIEWS } from "@/lib/gem/point";
import { projectSolid, projectVec3 } from "@/lib/gem/project-solid";
import type { PlaneSpec } from "@/lib/gem/proportions";
import { toSvg } from "@/lib/gem/to-svg";

const ROUND = buildSolid("round-brilliant");
const CUTS = CUT_NAMES.filter((cut) => cut !== "custom");

function getArea(points: readonly Point[]): number {
  return points.reduce((sum, [x, y], i) => {
    const [px, py] = points.at(i - 1) ?? [0, 0];
    return sum + (px * y - py * x) / 2;
  }, 0);
}

describe("the clock", () => {
  it("runs clockwise from 12 in the crown view", () => {
    expect(toClockDeg("crown", [0, 0.3])).toBe(0);
    expect(toClockDeg("crown", [0.3, 0])).toBe(90);
    expect(toClockDeg("crown", [0, -0.3])).toBe(180);
    expect(toClockDeg("crown", [-0.3, 0])).toBe(270);
  });

  it("names the same place alike in both views: 3 o'clock is on the left of the pavilion view", () => {
    expect(toClockDeg("pavilion", [-0.3, 0])).toBe(90);
    const point: Point = [0.12, -0.31];
    expect(toClockDeg("pavilion", toOtherView(point))).toBeCloseTo(toClockDeg("crown", point), 12);
    const [x, y] = fromClockDeg("pavilion", 90, 0.3);
    expect([x, Math.round(y * 1e12)]).toEqual([-0.3, 0]);
  });

  it("turns the crown view clockwise and the pavilion view the other way", () => {
    expect(turnPoint("crown", [0, 0.4], 90)).toEqual([0.4, 0]);
    expect(turnPoint("pavilion", [0, 0.4], 90)).toEqual([-0.4, 0]);
    for (const view of VIEWS) {
      expect(toClockDeg(view, turnPoint(view, [0.1, 0.2], 45))).toBeCloseTo(
        (toClockDeg(view, [0.1, 0.2]) + 45) % 360,
        9,
      );
    }
  });
});

describe("the outline", () => {
  it("of a round holds what lies within the circle", () => {
    for (let deg = 0; deg < 360; deg += 7) {
      expect(isInsideOutline(ROUND, "crown", fromClockDeg("crown", deg, 0.5))).toBe(true);
      expect(isInsideOutline(ROUND, "crown", fromClockDeg("crown", deg, 0.499))).toBe(true);
      expect(isInsideOutline(ROUND, "crown", fromClockDeg("crown", deg, 0.503))).toBe(false);
      expect(getRimShare(ROUND, "crown", fromClockDeg("crown", deg, 0.25))).toBeCloseTo(0.5, 3);
    }
    expect(getRimShare(ROUND, "crown", [0, 0])).toBe(0);
  });

  it("of a heart is left in its cleft", () => {
    const heart = buildSolid("heart");
    expect(isInsideOutline(heart, "crown", [0, 0.42])).toBe(false);
    expect(isInsideOutline(heart, "crown", [0.2, 0.42])).toBe(true);
  });

  it("of nothing holds nothing", () => {
    expect(isInsideOutline([], "crown", [0, 0])).toBe(false);
    expect(getRimShare([], "crown", [0.1, 0])).toBe(0);
  });

  it.each(CUTS)("of a %s is one girdle width wide, centred, and runs counter-clockwise", (cut) => {
    const { outline } = buildSolid(cut);
    const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)];
    expect(Math.max(...xs)).toBeCloseTo(0.5, 4);
    expect(Math.min(...xs)).toBeCloseTo(-0.5, 4);
    expect(Math.max(...ys) + Math.min(...ys)).toBeCloseTo(0, 3);
    expect(getArea(outline)).toBeGreaterThan(0.3);
  });
});

describe("a view", () => {
  it.each(CUTS)("of a %s is covered by its facets without gap or overlap", (cut) => {
    const solid = buildSolid(cut);
    for (const view of VIEWS) {
      const { polygons, outline } = drawView(solid, view);
      const areas = polygons.map(({ points }) => getArea(points));
      expect(Math.min(...areas)).toBeGreaterThan(0);
      expect(areas.reduce((sum, area) => sum + area, 0)).toBeCloseTo(getArea(outline), 9);
    }
  });

  it("shows a round's 33 crown and 24 pavilion facets", () => {
    expect(drawView(ROUND, "crown").polygons.length).toBe(33);
    expect(drawView(ROUND, "pavilion").polygons.length).toBe(24);
  });

  it("becomes an SVG of paths, with the facets' names and the hours where asked", () => {
    const plain = toSvg(ROUND, "crown");
    expect(plain).toMatch(/^<svg [^>]*viewBox="-0\.53 -0\.53 1\.06 1\.06"/);
    expect(plain).not.toContain("NaN");
    expect(plain).not.toContain("<text");
    const full = toSvg(ROUND, "crown", { hasClock: true, hasNames: true, title: "a < b" });
    expect(full.match(/<text/g)?.length).toBe(12);
    expect(full).toContain("<title>upper girdle 5</title>");
    expect(full).toContain("<title>a &lt; b</title>");
  });
});

describe("a place in words", () => {
  it.each([
    ["crown", [0.37, -0.25], "upper girdle facet near 4 o'clock", "upper girdle"],
    ["crown", [0.01, 0.02], "table, near the centre", "table"],
    ["crown", [0, -0.2], "table, towards 6 o'clock", "table"],
    ["crown", [0, 0.4], "bezel facet near 12 o'clock", "bezel"],
    ["crown", [0.499, 0], "at the girdle near 3 o'clock", "girdle"],
    ["pavilion", [-0.2, 0], "pavilion main facet near 3 o'clock", "pavilion main"],
    ["pavilion", [0.4, 0.1], "lower girdle facet near 9 o'clock", "lower girdle"],
    ["crown", [0.6, 0], "outside the girdle near 3 o'clock", "outside"],
  ] as const)("%s %o: %s", (view, point, words, zone) => {
    const place = locatePoint(ROUND, view, point);
    expect([place.words, place.zone]).toEqual([words, zone]);
  });

  it("names and numbers the facet", () => {
    expect(locatePoint(ROUND, "crown", [0.4, 0]).facetName).toBe("bezel 3");
    expect(locatePoint(ROUND, "crown", [0.6, 0]).facetIndex).toBeNull();
    expect(toKindWords("crown-step-1")).toBe("first crown step");
    expect(locatePoint(buildSolid("emerald"), "crown", [0.45, 0]).words).toBe(
      "first crown step near 3 o'clock",
    );
  });

  it.each(CUTS)("is found for every facet of a %s at its own middle", (cut) => {
    const solid = buildSolid(cut);
    for (const view of VIEWS) {
      for (const { points, facetIndex, kind } of drawView(solid, view).polygons) {
        if (solid.isCleft && kind === "table") continue;
        const sum = points.reduce<Point>(([sx, sy], [x, y]) => [sx + x, sy + y], [0, 0]);
        const place = locatePoint(solid, view, [sum[0] / points.length, sum[1] / points.length]);
        expect(place.facetIndex).toBe(facetIndex);
      }
    }
  });
});

describe("symmetry turns", () => {
  // scoring.md 3: eight for a round, four for a square, two for an oval or an emerald cut, one for pear or heart.
  it.each([
    ["round-brilliant", {}, [0, 45, -45, 90, -90, 135, -135, 180]],
    ["round-brilliant", { lengthToWidth: 1.03 }, [0, 45, -45, 90, -90, 135, -135, 180]],
    ["princess", {}, [0, 90, -90, 180]],
    ["square-emerald", {}, [0, 90, -90, 180]],
    ["cushion", { lengthToWidth: 1 }, [0, 90, -90, 180]],
    ["cushion", {}, [0, 180]],
    ["oval", {}, [0, 180]],
    ["marquise", {}, [0, 180]],
    ["emerald", {}, [0, 180]],
    ["radiant", {}, [0, 180]],
    ["baguette", {}, [0, 180]],
    ["pear", {}, [0]],
    ["heart", {}, [0]],
  ] as const)("of a %s %o are %o", (cut, proportions, turns) => {
    expect(findSymmetryTurns(buildSolid(cut, proportions))).toEqual(turns);
  });
});

describe("profile and wireframe", () => {
  it("show the stone's width and heights", () => {
    const { outline, levels, edges } = drawProfile(ROUND);
    expect(Math.max(...outline.map(([x]) => x))).toBeCloseTo(0.5, 9);
    expect(levels.table - levels.girdleTop).toBeCloseTo(ROUND.crownHeight, 12);
    expect(levels.girdleTop - levels.girdleBottom).toBeCloseTo(0.03, 9);
    expect(Math.min(...outline.map(([, y]) => y))).toBeCloseTo(levels.lowest, 12);
    expect(edges.length).toBeGreaterThan(20);
  });

  it("draw every edge once, and the crown view when the stone is not tilted", () => {
    const edges = projectSolid(ROUND, { spinDeg: 0, tiltDeg: 0 });
    expect(edges.length).toBe(128); // check-values.md 2.2
    expect(projectVec3([0.1, 0.2, 0.3], { spinDeg: 0, tiltDeg: 0 })).toEqual({
      at: [0.1, 0.2],
      nearness: 0.3,
    });
    const turned = projectVec3([0, 0.4, 0], { spinDeg: 90, tiltDeg: 0 });
    expect(turned.at[0]).toBeCloseTo(0.4, 12);
    const pavilion = projectVec3([0.1, 0.2, -0.3], { spinDeg: 180, tiltDeg: 180 });
    expect(pavilion.at[0]).toBeCloseTo(-0.1, 12);
    expect(pavilion.at[1]).toBeCloseTo(0.2, 12);
    expect(pavilion.nearness).toBeCloseTo(0.3, 12);
  });

  it("call front what faces the viewer", () => {
    const edges = projectSolid(ROUND, { spinDeg: 20, tiltDeg: 35 });
    const firstFront = edges.findIndex((edge) => edge.isFront);
    expect(edges.slice(firstFront).every((edge) => edge.isFront)).toBe(true);
    expect(edges.filter((edge) => edge.isSilhouette).length).toBeGreaterThan(5);
  });
});

describe("a custom cut", () => {
  const ring = (name: string, side: PlaneSpec["side"], angleDeg: number, count: number, distance: number) =>
    Array.from({ length: count }, (_, i) => ({
      name: `${name} ${i + 1}`,
      side,
      angleDeg,
      azimuthDeg: (360 * i) / count,
      distance,
    }));
  const SIX: PlaneSpec[] = [
    { name: "Table", side: "crown", angleDeg: 0, azimuthDeg: 0, distance: 1.2 },
    ...ring("Crown main", "crown", 40, 6, 2.2),
    ...ring("Girdle", "girdle", 90, 6, 2.5),
    ...ring("Pavilion main", "pavilion", 42, 6, 2),
  ];

  it("is built from its planes, scaled and centred", () => {
    const solid = buildSolid("custom", { planes: SIX });
    expect(solid.facets.map((facet) => facet.kind).filter((kind) => kind === "crown-main").length).toBe(6);
    expect(solid.facets.find((facet) => facet.kind === "pavilion-main")?.name).toMatch(/^Pavilion main \d$/);
    const xs = solid.vertices.map(([x]) => x);
    expect([Math.min(...xs), Math.max(...xs)].map((x) => Math.round(x * 1e9) / 1e9)).toEqual([-0.5, 0.5]);
    const girdle = solid.facets.filter((facet) => facet.side === "girdle").flatMap((facet) => facet.vertices);
    const heights = girdle.map((index) => solid.vertices[index]?.[2] ?? 0);
    expect(Math.max(...heights) + Math.min(...heights)).toBeCloseTo(0, 9);
    expect(findSymmetryTurns(solid)).toEqual([0, 60, -60, 120, -120, 180]);
  });

  it("does not depend on the unit of its distances", () => {
    const small = SIX.map((plane) => ({ ...plane, distance: plane.distance / 7 }));
    const [a, b] = [buildSolid("custom", { planes: SIX }), buildSolid("custom", { planes: small })];
    a.vertices.forEach((vertex, i) => {
      vertex.forEach((value, k) => {
        expect(value).toBeCloseTo(b.vertices[i]?.[k] ?? Number.NaN, 9);
      });
    });
  });

  it.each([
    ["a gap", SIX.slice(0, 13), /do not close/],
    [
      "a facet that takes nothing away",
      [...SIX, { ...SIX[1], name: "Lost", distance: 9 } as PlaneSpec],
      /Lost leaves no facet/,
    ],
  ])("is refused with %s", (_, planes, reason) => {
    expect(() => buildSolid("custom", { planes })).toThrow(reason);
    try {
      buildSolid("custom", { planes });
    } catch (thrown) {
      expect(isAppError(thrown, "bad-input") && thrown.faults[0]?.path).toBe("planes");
    }
  });
});

describe("names of cuts", () => {
  it("have a label each", () => {
    for (const cut of CUT_NAMES) expect(CUT_LABELS[cut].length).toBeGreaterThan(3);
    expect(isCutName("emerald")).toBe(true);
    expect(isCutName("no-cut")).toBe(false);
  });
});
