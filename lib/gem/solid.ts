import type { CutName } from "@/lib/gem/cut-name";
import type { FacetSide } from "@/lib/gem/facet-plane";
import type { Point } from "@/lib/gem/point";
import type { Proportions } from "@/lib/gem/proportions";
import type { Vec3 } from "@/lib/gem/vec3";

/** Which half of a cleft stone a facet belongs to; "both" for every facet of any other stone. */
export type Lobe = "both" | "right" | "left";

/** A facet of a solid. */
export interface Facet {
  /** "bezel 3"; a kind with one facet has no number: "table". Numbers run clockwise from 12 as the crown is seen. */
  readonly name: string;
  /** Kebab-case: "upper-girdle". */
  readonly kind: string;
  readonly side: FacetSide;
  /** The number within the kind, from 1. */
  readonly index: number;
  /** Indices into the solid's vertices, counter-clockwise as seen from outside. */
  readonly vertices: readonly number[];
  /** Unit length, outward. */
  readonly normal: Vec3;
  /** normal . x = offset for every point x of the facet, in girdle widths. */
  readonly offset: number;
  readonly lobe: Lobe;
}

/** A stone as a closed polyhedron in the frame of `Vec3`. */
export interface Solid {
  readonly cut: CutName;
  /** Filled in: every number that the cut uses. */
  readonly proportions: Proportions;
  readonly vertices: readonly Vec3[];
  readonly facets: readonly Facet[];
  /**
   * The girdle outline in the crown view, counter-clockwise: the smooth curve that the stone is cut to. The
   * girdle's corners are among its points; between them the solid lies a little within it (1% of a girdle
   * width for a round), and a point there counts with the facet next to it.
   */
  readonly outline: readonly Point[];
  /** From the girdle's upper edge to the table, in girdle widths. */
  readonly crownHeight: number;
  /** From the girdle's lower edge to the lowest point, in girdle widths. */
  readonly pavilionDepth: number;
  /** Of the girdle where it is thickest, in girdle widths. */
  readonly girdleThickness: number;
  /** True for the heart: the solid is then the union of two convex halves that meet at x = 0. */
  readonly isCleft: boolean;
}
