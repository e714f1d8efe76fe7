/** The two views of a stone as the editor needs them: where the girdle runs and what lies inside it. */
import { drawView } from "@/lib/gem/draw-view";
import { getRimShare, isInsideOutline } from "@/lib/gem/is-inside-outline";
import { type Point, VIEWS, type View } from "@/lib/gem/point";
import type { Solid } from "@/lib/gem/solid";

export interface StoneFrame {
  /** True for a point inside the girdle or on it. */
  readonly isInside: (view: View, point: Point) => boolean;
  /** 0 at the centre, 1 at the girdle along the ray through the point, more outside. */
  readonly getRimShare: (view: View, point: Point) => number;
  /** Half the width of the square that shows a whole view with room for its clock, girdle widths. */
  readonly halfWidth: number;
}

/** On the girdle is inside it; the file's schema admits the same rounding. */
const ON_GIRDLE = 1e-6;
/** Room around the girdle for the clock. */
const MARGIN = 1.17;

/** The frame of a solid. */
export function createStoneFrame(solid: Solid): StoneFrame {
  const reach = Math.max(
    ...VIEWS.flatMap((view) => drawView(solid, view).outline.flatMap(([x, y]) => [Math.abs(x), Math.abs(y)])),
  );
  return {
    isInside: (view, point) => isInsideOutline(solid, view, point, ON_GIRDLE),
    getRimShare: (view, point) => getRimShare(solid, view, point),
    halfWidth: reach * MARGIN,
  };
}
