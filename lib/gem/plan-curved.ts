import type { CutPlan } from "@/lib/gem/cut-plan";
import { type Station, toStation } from "@/lib/gem/lay-brilliant";
import { type OutlineCurve, toConicWeight } from "@/lib/gem/outline-curve";
import { planBrilliant } from "@/lib/gem/plan-brilliant";
import { layQuarters } from "@/lib/gem/plan-ellipse";
import type { Point } from "@/lib/gem/point";
import { getProportion, type Proportions } from "@/lib/gem/proportions";

function toStations(
  curve: OutlineCurve,
  places: readonly number[],
  tips: ReadonlyMap<number, Point>,
): Station[] {
  return places.map((u) => {
    const normal = tips.get(u);
    return normal === undefined ? toStation(curve, u) : { u, normal };
  });
}

/**
 * The marquise: the brilliant pattern on four parabolic wings with points at 12 and 6 o'clock; 57 facets and
 * the culet (check-values.md 2.4; stones with French tips have 56). The bezel and the main at a point face
 * straight along the stone. `wingPct` says where the tangents of a point meet the line of the side, in percent
 * of the way from the middle to the point.
 */
export function planMarquise(proportions: Proportions): CutPlan {
  const half = getProportion(proportions, "lengthToWidth") / 2;
  const via = half * (getProportion(proportions, "wingPct") / 100);
  const curve: OutlineCurve = [
    { from: [0, half], via: [0.5, via], to: [0.5, 0], weight: 1 },
    { from: [0.5, 0], via: [0.5, -via], to: [0, -half], weight: 1 },
    { from: [0, -half], via: [-0.5, -via], to: [-0.5, 0], weight: 1 },
    { from: [-0.5, 0], via: [-0.5, via], to: [0, half], weight: 1 },
  ];
  const tips = new Map<number, Point>([
    [0, [0, 1]],
    [2, [0, -1]],
  ]);
  const stations = toStations(curve, [0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5], tips);
  return planBrilliant({ curve, stations, isClosed: true, apex: [0, 0], starFrom: "table" }, proportions);
}

/**
 * The pear: the brilliant pattern with the point at 12 o'clock and the head at 6, 57 facets and the culet
 * (check-values.md 2.4: 56 to 58; here every main is present). The head is as deep as half the width, the
 * culet lies where the stone is widest. `wingPct` as in a marquise; `shoulderPct` is the fullness of the head,
 * 41 for half an ellipse.
 */
export function planPear(proportions: Proportions): CutPlan {
  const half = getProportion(proportions, "lengthToWidth") / 2;
  const waist = 0.5 - half; // y where the stone is widest
  const wing = (half - waist) * (getProportion(proportions, "wingPct") / 100);
  const head = toConicWeight(getProportion(proportions, "shoulderPct") / 100);
  const curve: OutlineCurve = [
    { from: [0, half], via: [0.5, waist + wing], to: [0.5, waist], weight: 1 },
    { from: [0.5, waist], via: [0.5, -half], to: [0, -half], weight: head },
    { from: [0, -half], via: [-0.5, -half], to: [-0.5, waist], weight: head },
    { from: [-0.5, waist], via: [-0.5, waist + wing], to: [0, half], weight: 1 },
  ];
  const stations = toStations(curve, [0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5], new Map([[0, [0, 1]]]));
  return planBrilliant({ curve, stations, isClosed: true, apex: [0, waist], starFrom: "table" }, proportions);
}

/**
 * The cushion: the brilliant pattern with mains at the sides and the corners, 57 facets and the culet
 * (check-values.md 2.4: 58; modified cushions have 64). `shoulderPct` is the fullness of the corners: 41 would
 * be an oval, 100 a rectangle.
 */
export function planCushion(proportions: Proportions): CutPlan {
  const half = getProportion(proportions, "lengthToWidth") / 2;
  const weight = toConicWeight(getProportion(proportions, "shoulderPct") / 100);
  const curve = layQuarters(0.5, half, weight);
  const stations = toStations(curve, [0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5], new Map());
  return planBrilliant({ curve, stations, isClosed: true, apex: [0, 0], starFrom: "table" }, proportions);
}

/**
 * The right half of a heart's outline, clockwise from the cleft (12 o'clock) to the point (6 o'clock): the lobe
 * in two conics, then the wing. It is convex, so the half stone is.
 */
function layHeartHalf(proportions: Proportions): OutlineCurve {
  const half = getProportion(proportions, "lengthToWidth") / 2;
  const cleft = half - getProportion(proportions, "cleftPct") / 100;
  const full = getProportion(proportions, "shoulderPct") / 100;
  const waist = half - 0.34;
  const wing = (waist + half) * (getProportion(proportions, "wingPct") / 100);
  return [
    { from: [0, cleft], via: [0.09, half], to: [0.25, half], weight: toConicWeight(full) },
    { from: [0.25, half], via: [0.5, half], to: [0.5, waist], weight: toConicWeight(full) },
    { from: [0.5, waist], via: [0.5, waist - wing], to: [0, -half], weight: 1 },
  ];
}

/**
 * The heart: the right half of the stone as a convex solid with the wall x = 0, and its mirror image; the table,
 * the facets at the point and the culet cross the middle and are one facet each. Nine mains (one at the point,
 * four a side) give 34 crown and 25 pavilion facets, the 59 of check-values.md 2.4 (56 to 58 are also usual).
 * The cleft lies at 12 o'clock, the point at 6; a groove runs from the cleft over the crown to the table and
 * under the pavilion to the culet, and the table has a notch there. The outline is not convex, so what the
 * optics claim holds for light that stays within the stone (see `findImages`).
 */
export function planHeart(proportions: Proportions): CutPlan {
  const curve = layHeartHalf(proportions);
  const stations = toStations(curve, [0, 0.95, 1.8, 2.55, 3], new Map([[3, [0, -1]]]));
  const half = planBrilliant(
    { curve, stations, isClosed: false, apex: [0, 0], starFrom: "table" },
    proportions,
  );
  const mirrored = half.outline
    .slice(1, -1)
    .reverse()
    .map(([x, y]): Point => [0 - x, y]);
  return { planes: half.planes, outline: [...half.outline, ...mirrored], isCleft: true };
}
