import { drawView, type FacetPolygon } from "@/lib/gem/draw-view";
import { getPolygonDistance, getRimShare } from "@/lib/gem/is-inside-outline";
import { fromClockDeg, type Point, type View } from "@/lib/gem/point";
import type { Solid } from "@/lib/gem/solid";

/** Something drawn over the diagram of a view: a ring at a point, with a caption in words. */
export interface SvgSpot {
  readonly at: Point;
  readonly radius: number;
  /** 0 to 1. */
  readonly opacity: number;
  readonly caption: string;
}

export interface SvgOptions {
  /** Side of the square picture in pixels. */
  readonly size?: number;
  readonly spots?: readonly SvgSpot[];
  /** Each facet as an invisible path with its name, which browsers show under the pointer. */
  readonly hasNames?: boolean;
  /** Clock hours round the girdle, in the crown view's sense. */
  readonly hasClock?: boolean;
  readonly title?: string;
}

function toNumber(value: number): string {
  return String(Math.round(value * 1e5) / 1e5 + 0);
}

/** Points as the `d` of an SVG path; y is turned to point down. Empty for no points. */
export function toSvgPath(points: readonly Point[], isClosed: boolean): string {
  if (points.length === 0) return "";
  const steps = points.map(([x, y], i) => `${i === 0 ? "M" : "L"}${toNumber(x)} ${toNumber(-y)}`);
  return `${steps.join("")}${isClosed ? "Z" : ""}`;
}

function escapeXml(text: string): string {
  return text
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
}

/** Half the side of the square that holds the outline and a margin, wider with a clock. */
function getReach(outline: readonly Point[], hasClock: boolean): number {
  return Math.max(...outline.map(([x, y]) => Math.max(Math.abs(x), Math.abs(y)))) * (hasClock ? 1.18 : 1.06);
}

/** How far out on its ray an hour stands: clear of the girdle all round, also over a cleft and beside a corner. */
function getClearRadius(outline: readonly Point[], ray: Point, gap: number): number {
  let radius = 1 / getRimShare(outline, "crown", ray);
  const at = (): Point => [ray[0] * radius, ray[1] * radius];
  while (getPolygonDistance(outline, at()) < gap) radius += gap / 10;
  return radius;
}

/** The twelve hours, each on its ray from the centre, just outside the girdle. */
function drawClock(outline: readonly Point[], view: View, reach: number): string {
  const hours = Array.from({ length: 12 }, (_, i) => i + 1).map((hour) => {
    const ray = fromClockDeg(view, hour * 30, 1);
    const radius = getClearRadius(outline, ray, reach * 0.07);
    return `<text x="${toNumber(ray[0] * radius)}" y="${toNumber(-ray[1] * radius)}">${hour}</text>`;
  });
  const size = toNumber(reach * 0.08);
  return `<g font-family="sans-serif" font-size="${size}" fill="currentColor" stroke="none" text-anchor="middle" dominant-baseline="central">${hours.join("")}</g>`;
}

function drawName({ name, points }: FacetPolygon): string {
  return `<path d="${toSvgPath(points, true)}" fill="transparent"><title>${escapeXml(name)}</title></path>`;
}

/**
 * A view as an SVG document: paths only, in girdle widths, so it is crisp at any size; lines keep their width
 * in pixels when it is scaled. It takes its colour from `color` where it is shown inline.
 */
export function toSvg(solid: Solid, view: View, options: SvgOptions = {}): string {
  const { size = 560, spots = [], hasClock = false, hasNames = false } = options;
  const drawing = drawView(solid, view);
  const reach = getReach(drawing.outline, hasClock);
  const title = escapeXml(options.title ?? `${solid.cut}, ${view} view`);
  const edges = drawing.edges.map((edge) => toSvgPath(edge, false)).join("");
  const box = [-reach, -reach, 2 * reach, 2 * reach].map(toNumber).join(" ");
  const thin = Math.max(1, size / 800); // pixels: a hair at any size
  const line = 'fill="none" stroke="currentColor" stroke-linejoin="round" vector-effect="non-scaling-stroke"';
  const rings = spots.map(
    ({ at, radius, opacity, caption }) =>
      `<circle cx="${toNumber(at[0])}" cy="${toNumber(-at[1])}" r="${toNumber(radius)}" fill="none" stroke="currentColor" stroke-opacity="${toNumber(opacity)}" vector-effect="non-scaling-stroke"><title>${escapeXml(caption)}</title></circle>`,
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" role="img" width="${size}" height="${size}" viewBox="${box}">`,
    `<title>${title}</title>`,
    `<path d="${edges}" stroke-width="${toNumber(thin)}" stroke-opacity="0.65" stroke-linecap="round" ${line}/>`,
    `<path d="${toSvgPath(drawing.outline, true)}" stroke-width="${toNumber(1.75 * thin)}" ${line}/>`,
    ...(hasNames ? drawing.polygons.map(drawName) : []),
    ...rings,
    hasClock ? drawClock(drawing.outline, view, reach) : "",
    "</svg>",
  ].join("");
}
