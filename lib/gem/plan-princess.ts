import type { CutPlan } from "@/lib/gem/cut-plan";
import { type FacetPlane, toFacetPlane, toPlaneThrough } from "@/lib/gem/facet-plane";
import { type ChevronSide, layChevrons, layMain } from "@/lib/gem/lay-chevrons";
import { layGirdle } from "@/lib/gem/lay-girdle";
import { listOutlineCorners } from "@/lib/gem/plan-step";
import type { Point } from "@/lib/gem/point";
import { getProportion, type Proportions } from "@/lib/gem/proportions";
import { dotVec3, toUnitVec3, type Vec3 } from "@/lib/gem/vec3";

/** Table corners towards the stone's corners, as a share of those of the square that the table nearly is. */
const TABLE_CORNER = 0.92;
/** Where the crown's girdle row ends, as a share of the way from girdle to table. */
const BREAK = 0.55;
/** How much steeper the girdle row is than the crown as a whole, in degrees. */
const BREAK_DEG = 8;

/** Turns by quarters, clockwise as the crown is seen. */
function turnQuarters([x, y, z]: Vec3, quarters: number): Vec3 {
  if (quarters === 1) return [y, 0 - x, z];
  if (quarters === 2) return [0 - x, 0 - y, z];
  return quarters === 3 ? [0 - y, x, z] : [x, y, z];
}

function turnPlane(plane: FacetPlane, quarters: number): FacetPlane {
  return { ...plane, normal: turnQuarters(plane.normal, quarters) };
}

/** Stretches a plane along 12 to 6 o'clock. */
function stretchPlane(plane: FacetPlane, by: number): FacetPlane {
  const [x, y, z] = plane.normal;
  const outward: Vec3 = [x, y / by, z];
  const length = Math.sqrt(dotVec3(outward, outward));
  return { ...plane, normal: toUnitVec3(outward), offset: plane.offset / length };
}

/** The crown facets of the side at 3 o'clock and of the corner clockwise from it, for a square of width 1. */
function layCrownQuarter(table: number, crownAngleDeg: number, halfGirdle: number): FacetPlane[] {
  const degrees = Math.PI / 180;
  const inset = (1 - table) / 2;
  const height = inset * Math.tan(crownAngleDeg * degrees);
  const steep = Math.tan((crownAngleDeg + BREAK_DEG) * degrees);
  const run = inset * BREAK;
  const rise = Math.min(run * steep, height * 0.9);
  const u = (table / 2) * TABLE_CORNER;
  const breakY = 1 - ((1 - 2 * u) * rise) / height - (0.5 - run);
  const top = halfGirdle + height;
  const inside: Vec3 = [0, 0, 0];
  const tableSide: Vec3 = [table / 2, 0, top];
  const meet = (sign: number): Vec3 => [0.5 - run, sign * breakY, halfGirdle + rise];
  const corner = (sign: number): Vec3 => [u, sign * u, top];
  const slope = (height - rise) / (inset - run);
  return [
    toPlaneThrough("star", "crown", [tableSide, corner(1), meet(1)], inside),
    toPlaneThrough("star", "crown", [tableSide, corner(-1), meet(-1)], inside),
    toFacetPlane("bezel", "crown", [height / (1 - 2 * u), -height / (1 - 2 * u), 1], [0.5, -0.5, halfGirdle]),
    toFacetPlane("side-bezel", "crown", [slope, 0, 1], tableSide),
    toFacetPlane("upper-girdle", "crown", [rise / run, 0, 1], [0.5, 0, halfGirdle]),
  ];
}

function layPavilionQuarter(depth: number, chevrons: number, halfGirdle: number): FacetPlane[] {
  const side: ChevronSide = {
    from: [0.5, 0.5],
    to: [0.5, -0.5],
    middle: [0.5, 0],
    apex: [0, 0],
    depth,
    mainShare: 0.5,
    halfGirdle,
  };
  return [...layChevrons(side, chevrons), layMain([0.5, -0.5], [Math.SQRT1_2, -Math.SQRT1_2], side)];
}

/** All four quarters, kind by kind. */
function layRound(quarter: readonly FacetPlane[]): FacetPlane[] {
  return quarter.flatMap((plane) => [3, 0, 1, 2].map((quarters) => turnPlane(plane, quarters)));
}

/**
 * The princess: a square with sharp corners. Crown 21: table, 8 stars, 4 bezels at the corners, 4 side bezels
 * and 4 upper-girdle facets; girdle 4; pavilion 32: 4 lower-girdle facets, 3 pairs of chevrons on each side,
 * 4 mains from the corners to the culet; together the 57 of check-values.md 2.4. With 2 pairs of chevrons they
 * are the 49 (50 with a culet) that is also printed; 76 is another pattern. The crown angle is that of the
 * crown as a whole from the middle of a side to the table, the pavilion angle that of the mains under the
 * corners. A longer stone is the square stretched along 12 to 6 o'clock; the angles then are those at 3 and 9.
 */
export function planPrincess(proportions: Proportions): CutPlan {
  const length = getProportion(proportions, "lengthToWidth");
  const halfGirdle = getProportion(proportions, "girdlePct") / 200;
  const table = getProportion(proportions, "tablePct") / 100;
  const culet = getProportion(proportions, "culetPct") / 100;
  const depth = Math.SQRT1_2 * Math.tan((getProportion(proportions, "pavilionAngleDeg") * Math.PI) / 180);
  const crownAngleDeg = getProportion(proportions, "crownAngleDeg");
  const height = ((1 - table) / 2) * Math.tan((crownAngleDeg * Math.PI) / 180);
  const corners: Point[] = listOutlineCorners(1, 0);
  const bottom = -halfGirdle - depth * (1 - culet * Math.SQRT1_2);
  const planes = [
    toFacetPlane("table", "crown", [0, 0, 1], [0, 0, halfGirdle + height]),
    ...layRound(layCrownQuarter(table, crownAngleDeg, halfGirdle)),
    ...layGirdle(corners, true, halfGirdle),
    ...layRound(layPavilionQuarter(depth, getProportion(proportions, "chevrons"), halfGirdle)),
    ...(culet > 0 ? [toFacetPlane("culet", "pavilion", [0, 0, -1], [0, 0, bottom])] : []),
  ];
  return {
    planes: planes.map((plane) => stretchPlane(plane, length)),
    outline: listOutlineCorners(length, 0),
    isCleft: false,
  };
}
