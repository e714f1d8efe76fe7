import { type Point, toOtherView, type View } from "@/lib/gem/point";
import type { Facet, Solid } from "@/lib/gem/solid";
import type { Vec3 } from "@/lib/gem/vec3";

/** A facet as a view shows it. */
export interface FacetPolygon {
  readonly facetIndex: number;
  readonly name: string;
  readonly kind: string;
  /** Counter-clockwise as the view is seen, in the view's frame; along the girdle it follows the outline. */
  readonly points: readonly Point[];
}

/** A view as vectors, in its own frame. */
export interface ViewDrawing {
  readonly view: View;
  /** The girdle, counter-clockwise as the view is seen. */
  readonly outline: readonly Point[];
  readonly polygons: readonly FacetPolygon[];
  /** Facet edges within the outline, each once. */
  readonly edges: readonly (readonly [Point, Point])[];
}

/** More outline points than this between two neighbouring corners of the girdle: not one chord. */
const LONGEST_CHORD = 24;

function isSeen(facet: Facet, view: View): boolean {
  return view === "crown" ? facet.normal[2] > 1e-9 : facet.normal[2] < -1e-9;
}

/** For each vertex its place in the view's outline, or -1. */
function listOutlinePlaces(points: readonly Point[], outline: readonly Point[]): number[] {
  return points.map(([x, y]) =>
    outline.findIndex((corner) => Math.abs(corner[0] - x) < 1e-6 && Math.abs(corner[1] - y) < 1e-6),
  );
}

/** The outline's points between two of its places, counter-clockwise, or null when they are not neighbours. */
function findStretch(outline: readonly Point[], from: number, to: number): readonly Point[] | null {
  if (from < 0 || to < 0 || from === to) return null;
  const count = (to - from + outline.length) % outline.length;
  if (count > LONGEST_CHORD) return null;
  return Array.from({ length: count - 1 }, (_, i) => outline[(from + 1 + i) % outline.length] as Point);
}

function drawFacets(solid: Solid, view: View, outline: readonly Point[]): ViewDrawing {
  const toFrame = ([x, y]: Vec3): Point => (view === "crown" ? [x, y] : toOtherView([x, y]));
  const flat = solid.vertices.map(toFrame);
  const places = listOutlinePlaces(flat, outline);
  const polygons: FacetPolygon[] = [];
  const edges: [Point, Point][] = [];
  const drawn = new Set<number>();
  solid.facets.forEach((facet, facetIndex) => {
    if (!isSeen(facet, view)) return;
    const points: Point[] = [];
    facet.vertices.forEach((from, i) => {
      const to = facet.vertices[(i + 1) % facet.vertices.length] as number;
      points.push(flat[from] as Point);
      const stretch = findStretch(outline, places[from] as number, places[to] as number);
      if (stretch !== null) {
        points.push(...stretch);
        return;
      }
      const key = Math.min(from, to) * solid.vertices.length + Math.max(from, to);
      if (drawn.has(key)) return;
      drawn.add(key);
      edges.push([flat[from] as Point, flat[to] as Point]);
    });
    polygons.push({ facetIndex, name: facet.name, kind: facet.kind, points });
  });
  return { view, outline, polygons, edges };
}

const drawings = new WeakMap<Solid, Map<View, ViewDrawing>>();

/**
 * A view of a solid as vectors: the outline, the facets that face the viewer, and the edges between them. The
 * girdle is drawn as the smooth curve that the stone is cut to, and the facets beside it reach out to the
 * curve; everything within is the solid's own edges. Remembered with the solid.
 */
export function drawView(solid: Solid, view: View): ViewDrawing {
  const known = drawings.get(solid)?.get(view);
  if (known !== undefined) return known;
  const outline = view === "crown" ? solid.outline : [...solid.outline].reverse().map(toOtherView);
  const drawing = drawFacets(solid, view, outline);
  const ofSolid = drawings.get(solid) ?? new Map<View, ViewDrawing>();
  ofSolid.set(view, drawing);
  drawings.set(solid, ofSolid);
  return drawing;
}
