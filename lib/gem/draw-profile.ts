import { getHull } from "@/lib/gem/get-hull";
import type { Point } from "@/lib/gem/point";
import { projectSolid, projectVec3 } from "@/lib/gem/project-solid";
import type { Solid } from "@/lib/gem/solid";

/** The stone from the side, table up. */
export interface ProfileDrawing {
  /** Counter-clockwise; x to the right, y up, y = 0 at half the girdle's height. */
  readonly outline: readonly Point[];
  /** Edges of the facets that face the viewer, within the outline. */
  readonly edges: readonly (readonly [Point, Point])[];
  /** Heights in girdle widths, for a scale beside the drawing. */
  readonly levels: {
    readonly table: number;
    readonly girdleTop: number;
    readonly girdleBottom: number;
    readonly lowest: number;
  };
}

/**
 * A solid from the side: across its width, seen from 6 o'clock (`turnDeg` 0), or along its length, seen from 3
 * o'clock (90); any other turn as well. The stone turns clockwise as the crown is seen.
 */
export function drawProfile(solid: Solid, turnDeg = 0): ProfileDrawing {
  const rotation = { spinDeg: turnDeg, tiltDeg: 90 };
  const outline = getHull(solid.vertices.map((vertex) => projectVec3(vertex, rotation).at));
  const edges = projectSolid(solid, rotation)
    .filter((edge) => edge.isFront && !edge.isSilhouette)
    .map((edge) => [edge.from.at, edge.to.at] as const);
  const heights = solid.vertices.map(([, , z]) => z);
  const [table, lowest] = [Math.max(...heights), Math.min(...heights)];
  const levels = {
    table,
    girdleTop: table - solid.crownHeight,
    girdleBottom: lowest + solid.pavilionDepth,
    lowest,
  };
  return { outline, edges, levels };
}
