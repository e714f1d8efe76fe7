import type { FacetPlane } from "@/lib/gem/facet-plane";
import type { Point } from "@/lib/gem/point";

/** What a cut's planner hands to the builder of the solid. */
export interface CutPlan {
  /** The facet planes in the order of the kinds; of a cleft stone only those of the right half (x >= 0). */
  readonly planes: readonly FacetPlane[];
  /** The girdle outline in the crown view, clockwise, with the corners of the girdle among its points. */
  readonly outline: readonly Point[];
  /** True when the stone is the right half and its mirror image: the heart. */
  readonly isCleft: boolean;
}
