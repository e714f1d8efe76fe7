import { type FacetPlane, toFacetPlane } from "@/lib/gem/facet-plane";
import type { Point } from "@/lib/gem/point";

/** The girdle: one vertical facet from each corner of the outline to the next; none for a knife edge. */
export function layGirdle(corners: readonly Point[], isClosed: boolean, halfGirdle: number): FacetPlane[] {
  if (halfGirdle === 0) return [];
  const last = isClosed ? corners.length : corners.length - 1;
  return Array.from({ length: last }, (_, i) => {
    const [ax, ay] = corners[i] as Point;
    const [bx, by] = corners[(i + 1) % corners.length] as Point;
    return toFacetPlane("girdle", "girdle", [ay - by, bx - ax, 0], [ax, ay, 0]);
  });
}
