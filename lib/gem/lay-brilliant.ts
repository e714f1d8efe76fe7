import { AppError } from "@/lib/base/app-error";
import { type FacetPlane, toFacetPlane, toPlaneThrough } from "@/lib/gem/facet-plane";
import type { Heights } from "@/lib/gem/get-heights";
import { findCurveCrossing, getCurveNormal, getCurvePoint, type OutlineCurve } from "@/lib/gem/outline-curve";
import type { Point } from "@/lib/gem/point";
import { getProportion, type Proportions } from "@/lib/gem/proportions";
import type { Vec3 } from "@/lib/gem/vec3";

/** A place on the outline where a bezel and a pavilion main meet the girdle. */
export interface Station {
  readonly u: number;
  /** The outward horizontal direction that the two facets face; at a tip it is a choice. */
  readonly normal: Point;
}

/** A station that faces as the curve does. */
export function toStation(curve: OutlineCurve, u: number): Station {
  return { u, normal: getCurveNormal(curve, u) };
}

interface Half {
  readonly station: Station;
  readonly next: Station;
  /** The girdle corner between the two stations. */
  readonly corner: Point;
  readonly cornerU: number;
}

/** What a brilliant pattern is laid on. */
export interface BrilliantGround {
  readonly curve: OutlineCurve;
  /** Clockwise. Of a closed pattern the last is joined to the first; of an open one (half a heart) it is not. */
  readonly stations: readonly Station[];
  readonly isClosed: boolean;
  /** Where the culet lies, and the point towards which the outline shrinks to the table. */
  readonly apex: Point;
  /**
   * Where the star length is counted from, on the way to the girdle: the table's edge, as in a round (check-values.md
   * 2.3), or the place where the ridge between two bezels has come down to the table's level.
   */
  readonly starFrom: "table" | "ridge";
}

function toLevel(point: Point, z: number): Vec3 {
  return [point[0], point[1], z];
}

function lerpPoint(from: Point, to: Point, t: number): Point {
  return [from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t];
}

/** Distance from the apex to the station's tangent line. */
function getSpan(ground: BrilliantGround, station: Station): number {
  const [x, y] = getCurvePoint(ground.curve, station.u);
  return (x - ground.apex[0]) * station.normal[0] + (y - ground.apex[1]) * station.normal[1];
}

/** 1 on the station's tangent line, 0 at the apex, linear between: the height of a main above or below. */
function getShare(ground: BrilliantGround, station: Station, point: Point): number {
  const along =
    (point[0] - ground.apex[0]) * station.normal[0] + (point[1] - ground.apex[1]) * station.normal[1];
  return along / getSpan(ground, station);
}

/**
 * The half between two neighbouring stations. Its girdle corner lies on the ray from the apex through the
 * crossing of the two tangents, which is where the two mains meet on either side of the stone, so that star,
 * halves and mains meet in points, as in a round.
 */
function layHalf(ground: BrilliantGround, station: Station, next: Station, nextU: number): Half {
  const a = getSpan(ground, station);
  const b = getSpan(ground, next);
  const det = station.normal[0] * next.normal[1] - station.normal[1] * next.normal[0];
  const direction: Point = [
    (a * next.normal[1] - b * station.normal[1]) / det,
    (b * station.normal[0] - a * next.normal[0]) / det,
  ];
  const cornerU = findCurveCrossing(ground.curve, { origin: ground.apex, direction }, station.u, nextU);
  return { station, next, corner: getCurvePoint(ground.curve, cornerU), cornerU };
}

/** The halves of a pattern, clockwise. */
export function layHalves(ground: BrilliantGround): Half[] {
  const { stations, isClosed, curve } = ground;
  const last = isClosed ? stations.length : stations.length - 1;
  return Array.from({ length: last }, (_, k) => {
    const station = stations[k] as Station;
    const next = stations[(k + 1) % stations.length] as Station;
    return layHalf(ground, station, next, k + 1 === stations.length ? next.u + curve.length : next.u);
  });
}

/** Bezels of neighbouring stations meet above the level of the table until their ridge has run down to it. */
function refuseStar(): never {
  const message =
    "the stars are too short, or the table too wide, for the stars to slope down from the table";
  throw new AppError("bad-input", `No stone can be cut to these proportions: ${message}.`, [
    { path: "starPct", message },
  ]);
}

/** The crown: table, star, bezel and upper-girdle facets. Throws AppError "bad-input" for stars that cannot slope. */
export function layCrown(ground: BrilliantGround, proportions: Proportions, heights: Heights): FacetPlane[] {
  const { curve, apex } = ground;
  const table = getProportion(proportions, "tablePct") / 100;
  const star = getProportion(proportions, "starPct") / 100;
  const top = heights.halfGirdle + heights.crown;
  const inside = toLevel(apex, 0);
  const tableCorner = (station: Station) =>
    toLevel(lerpPoint(apex, getCurvePoint(curve, station.u), table), top);
  const bezels = ground.stations.map((station) => {
    const rise = heights.crown / ((1 - table) * getSpan(ground, station));
    const outward: Vec3 = [station.normal[0] * rise, station.normal[1] * rise, 1];
    return toFacetPlane("bezel", "crown", outward, tableCorner(station));
  });
  const stars: FacetPlane[] = [];
  const uppers: FacetPlane[] = [];
  for (const half of layHalves(ground)) {
    const a = tableCorner(half.station);
    const b = tableCorner(half.next);
    const edge =
      ground.starFrom === "ridge"
        ? table / getShare(ground, half.station, half.corner)
        : getChordShare(apex, half.corner, [a[0], a[1]], [b[0], b[1]]);
    const tip = lerpPoint(apex, half.corner, edge + star * (1 - edge));
    const rise = (1 - getShare(ground, half.station, tip)) / (1 - table);
    if (rise >= 1) refuseStar();
    const starTip = toLevel(tip, heights.halfGirdle + heights.crown * rise);
    const corner = toLevel(half.corner, heights.halfGirdle);
    const from = toLevel(getCurvePoint(curve, half.station.u), heights.halfGirdle);
    const to = toLevel(getCurvePoint(curve, half.next.u), heights.halfGirdle);
    stars.push(toPlaneThrough("star", "crown", [a, b, starTip], inside));
    uppers.push(toPlaneThrough("upper-girdle", "crown", [from, corner, starTip], inside));
    uppers.push(toPlaneThrough("upper-girdle", "crown", [corner, to, starTip], inside));
  }
  return [toFacetPlane("table", "crown", [0, 0, 1], [0, 0, top]), ...stars, ...bezels, ...uppers];
}

/** How far along the ray from the apex to `corner` the chord from a to b is crossed (0 at the apex). */
function getChordShare(apex: Point, corner: Point, a: Point, b: Point): number {
  const nx = b[1] - a[1];
  const ny = a[0] - b[0];
  return (
    ((a[0] - apex[0]) * nx + (a[1] - apex[1]) * ny) /
    ((corner[0] - apex[0]) * nx + (corner[1] - apex[1]) * ny)
  );
}

/** The pavilion: lower-girdle facets and mains; and the culet, where there is one. */
export function layPavilion(
  ground: BrilliantGround,
  proportions: Proportions,
  heights: Heights,
): FacetPlane[] {
  const { curve, apex } = ground;
  const inner = 1 - getProportion(proportions, "lowerHalfPct") / 100;
  const culet = getProportion(proportions, "culetPct") / 100;
  const inside = toLevel(apex, 0);
  const mains = ground.stations.map((station) => {
    const rise = heights.pavilion / getSpan(ground, station);
    const outward: Vec3 = [station.normal[0] * rise, station.normal[1] * rise, -1];
    return toFacetPlane(
      "pavilion-main",
      "pavilion",
      outward,
      toLevel(apex, -heights.halfGirdle - heights.pavilion),
    );
  });
  const lowers: FacetPlane[] = [];
  for (const half of layHalves(ground)) {
    const end = lerpPoint(apex, half.corner, inner);
    const sink = 1 - getShare(ground, half.station, end);
    const innerEnd = toLevel(end, -heights.halfGirdle - heights.pavilion * sink);
    const corner = toLevel(half.corner, -heights.halfGirdle);
    const from = toLevel(getCurvePoint(curve, half.station.u), -heights.halfGirdle);
    const to = toLevel(getCurvePoint(curve, half.next.u), -heights.halfGirdle);
    lowers.push(toPlaneThrough("lower-girdle", "pavilion", [from, corner, innerEnd], inside));
    lowers.push(toPlaneThrough("lower-girdle", "pavilion", [corner, to, innerEnd], inside));
  }
  const bottom = -heights.halfGirdle - heights.pavilion * (1 - culet);
  const flat = culet > 0 ? [toFacetPlane("culet", "pavilion", [0, 0, -1], [apex[0], apex[1], bottom])] : [];
  return [...lowers, ...mains, ...flat];
}
