import type { CutPlan } from "@/lib/gem/cut-plan";
import { type FacetPlane, toFacetPlane } from "@/lib/gem/facet-plane";
import { getHeights } from "@/lib/gem/get-heights";
import { type BrilliantGround, layCrown, layHalves } from "@/lib/gem/lay-brilliant";
import { layChevrons, layCornerChevron, layMain } from "@/lib/gem/lay-chevrons";
import { layGirdle } from "@/lib/gem/lay-girdle";
import { getCurvePoint, type OutlineCurve } from "@/lib/gem/outline-curve";
import { listOutlineCorners } from "@/lib/gem/plan-step";
import type { Point } from "@/lib/gem/point";
import { getProportion, type Proportions } from "@/lib/gem/proportions";

/** The eight-sided outline as straight pieces, clockwise from the corner left of 12 o'clock. */
function layOctagon(corners: readonly Point[]): OutlineCurve {
  return corners.map((from, i) => {
    const to = corners[(i + 1) % corners.length] as Point;
    return { from, via: [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2], to, weight: 1 };
  });
}

/** At each corner the mains face halfway between the two sides that meet there. */
function layGround(proportions: Proportions): BrilliantGround {
  const corners = listOutlineCorners(
    getProportion(proportions, "lengthToWidth"),
    getProportion(proportions, "cornerPct") / 100,
  );
  const stations = corners.map((_, i) => {
    const azimuth = ((45 * i - 22.5) * Math.PI) / 180;
    return { u: i, normal: [Math.sin(azimuth), Math.cos(azimuth)] as const };
  });
  return { curve: layOctagon(corners), stations, isClosed: true, apex: [0, 0], starFrom: "ridge" };
}

function layRadiantPavilion(ground: BrilliantGround, proportions: Proportions): FacetPlane[] {
  const { halfGirdle, pavilion: depth } = getHeights(proportions);
  const chevrons = getProportion(proportions, "chevrons");
  const flanks = layHalves(ground).flatMap((half, i) => {
    const from = getCurvePoint(ground.curve, half.station.u);
    const { normal } = half.station;
    const mainShare =
      (half.corner[0] * normal[0] + half.corner[1] * normal[1]) / (from[0] * normal[0] + from[1] * normal[1]);
    const to = getCurvePoint(ground.curve, half.next.u);
    const side = { from, to, middle: half.corner, apex: ground.apex, depth, mainShare, halfGirdle };
    return i % 2 === 0 ? layChevrons(side, chevrons) : layCornerChevron(side);
  });
  const mains = ground.stations.map(({ u, normal }) =>
    layMain(getCurvePoint(ground.curve, u), normal, { apex: ground.apex, depth, halfGirdle }),
  );
  const culet = getProportion(proportions, "culetPct") / 100;
  const bottom = -halfGirdle - depth * (1 - culet);
  const flat = culet > 0 ? [toFacetPlane("culet", "pavilion", [0, 0, -1], [0, 0, bottom])] : [];
  return [...flanks, ...mains, ...flat];
}

/**
 * The radiant: a rectangle with cut-off corners in a brilliant pattern. Crown 25: table, 8 stars, 8 bezels at the
 * corners of the outline and 8 upper-girdle facets along its sides; girdle 8; pavilion 36: 8 lower-girdle
 * facets, two pairs of chevrons on each of the four long sides, one chevron under each cut-off corner, 8 mains;
 * and the culet: the 70 of check-values.md 2.4, whose share between crown and pavilion is this project's own.
 * Crown and pavilion angle are those a round of these heights would have, across the width; the star length is
 * counted from where the ridge between two bezels comes down to the table's level.
 */
export function planRadiant(proportions: Proportions): CutPlan {
  const ground = layGround(proportions);
  const heights = getHeights(proportions);
  const corners = ground.stations.map(({ u }) => getCurvePoint(ground.curve, u));
  const planes = [
    ...layCrown(ground, proportions, heights),
    ...layGirdle(corners, true, heights.halfGirdle),
    ...layRadiantPavilion(ground, proportions),
  ];
  return { planes, outline: corners, isCleft: false };
}
