import { drawView, type FacetPolygon } from "@/lib/gem/draw-view";
import { getPolygonDistance, getRimShare, isInsidePolygon } from "@/lib/gem/is-inside-outline";
import { type Point, toClockDeg, type View } from "@/lib/gem/point";
import type { Solid } from "@/lib/gem/solid";

/** Where a point of a view lies, for a readout and in words. */
export interface Place {
  readonly facetIndex: number | null;
  readonly facetName: string | null;
  readonly kind: string | null;
  /** The facet's kind in words; "girdle" within 2% of the outline; "outside". */
  readonly zone: string;
  /** Degrees clockwise from 12 in the crown view's sense, in [0, 360). */
  readonly clockDeg: number;
  /** The nearest hour, 1 to 12, in the crown view's sense. */
  readonly clockHour: number;
  /** 0 at the centre, 1 at the girdle along the ray through the point. */
  readonly radiusShare: number;
  /** "upper girdle facet near 4 o'clock" */
  readonly words: string;
}

const GIRDLE_SHARE = 0.98;
const CENTRE_SHARE = 0.12;
const ORDINALS = ["first", "second", "third", "fourth", "fifth", "sixth"];
const UNCOUNTED = new Set(["table", "culet"]);

/** A facet kind as people say it: "upper-girdle" is "upper girdle facet", "crown-step-1" is "first crown step". */
export function toKindWords(kind: string): string {
  const step = /^(.*)-(\d+)$/.exec(kind);
  if (step !== null) {
    const ordinal = ORDINALS[Number(step[2]) - 1] ?? `number ${step[2]}`;
    return `${ordinal} ${(step[1] ?? "").replaceAll("-", " ")}`;
  }
  const words = kind.replaceAll("-", " ");
  return UNCOUNTED.has(kind) ? words : `${words} facet`;
}

/** The hour nearest to a clock position in degrees: 1 to 12. */
export function toClockHour(clockDeg: number): number {
  const hour = Math.round(clockDeg / 30) % 12;
  return hour === 0 ? 12 : hour;
}

/** The facet polygon that holds a point; on an edge, the nearest; null where there is none. */
function findPolygon(solid: Solid, view: View, point: Point): FacetPolygon | null {
  const { polygons } = drawView(solid, view);
  const holding = polygons.find((polygon) => isInsidePolygon(polygon.points, point));
  if (holding !== undefined) return holding;
  let nearest: FacetPolygon | null = null;
  let distance = Number.POSITIVE_INFINITY;
  for (const polygon of polygons) {
    const here = getPolygonDistance(polygon.points, point);
    if (here < distance) [nearest, distance] = [polygon, here];
  }
  return nearest;
}

function toWords(kind: string, zone: string, radiusShare: number, hour: number): string {
  const what = toKindWords(kind);
  if (radiusShare < CENTRE_SHARE) return kind === "culet" ? what : `${what}, near the centre`;
  if (zone === "girdle") return `at the girdle near ${hour} o'clock`;
  return kind === "table" ? `table, towards ${hour} o'clock` : `${what} near ${hour} o'clock`;
}

/**
 * Where a point of a view lies: facet, zone, clock position and distance from the centre. Clock positions are
 * those of the crown view in both views. A point outside the girdle has no facet and the zone "outside"; a
 * point on the girdle's very edge counts with the facet next to it.
 */
export function locatePoint(solid: Solid, view: View, point: Point): Place {
  const radiusShare = getRimShare(solid, view, point);
  const clockDeg = toClockDeg(view, point);
  const clockHour = toClockHour(clockDeg);
  const polygon = radiusShare > 1 + 1e-3 ? null : findPolygon(solid, view, point);
  if (polygon === null) {
    const words = `outside the girdle near ${clockHour} o'clock`;
    return {
      facetIndex: null,
      facetName: null,
      kind: null,
      zone: "outside",
      clockDeg,
      clockHour,
      radiusShare,
      words,
    };
  }
  const { facetIndex, name: facetName, kind } = polygon;
  const zone = radiusShare >= GIRDLE_SHARE ? "girdle" : kind.replaceAll("-", " ");
  const words = toWords(kind, zone, radiusShare, clockHour);
  return { facetIndex, facetName, kind, zone, clockDeg, clockHour, radiusShare, words };
}
