import type { CutPlan } from "@/lib/gem/cut-plan";
import { getHeights } from "@/lib/gem/get-heights";
import { type BrilliantGround, layCrown, layHalves, layPavilion } from "@/lib/gem/lay-brilliant";
import { layGirdle } from "@/lib/gem/lay-girdle";
import { getCurvePoint, type OutlineCurve } from "@/lib/gem/outline-curve";
import type { Point } from "@/lib/gem/point";
import type { Proportions } from "@/lib/gem/proportions";

const SAMPLES_PER_CHORD = 12;

/** The outline sampled from `from` to `to` (u, clockwise), without its end; a straight chord gives its start alone. */
export function sampleOutline(curve: OutlineCurve, from: number, to: number): Point[] {
  const start = getCurvePoint(curve, from);
  const end = getCurvePoint(curve, to);
  const points = Array.from({ length: SAMPLES_PER_CHORD }, (_, i) =>
    getCurvePoint(curve, from + ((to - from) * i) / SAMPLES_PER_CHORD),
  );
  const chord: Point = [end[0] - start[0], end[1] - start[1]];
  const isStraight = points.every(
    ([x, y]) => Math.abs((x - start[0]) * chord[1] - (y - start[1]) * chord[0]) < 1e-9,
  );
  return isStraight ? [start] : points;
}

/** The whole plan of a brilliant pattern on an outline: crown, girdle and pavilion. */
export function planBrilliant(ground: BrilliantGround, proportions: Proportions): CutPlan {
  const heights = getHeights(proportions);
  const places = layHalves(ground).flatMap((half) => [half.station.u, half.cornerU]);
  const first = ground.stations[0];
  const last = ground.stations[ground.stations.length - 1];
  const endU = ground.isClosed ? (first?.u ?? 0) + ground.curve.length : (last?.u ?? 0);
  const outline = places.flatMap((u, i) => sampleOutline(ground.curve, u, places[i + 1] ?? endU));
  const corners = places.map((u) => getCurvePoint(ground.curve, u));
  if (!ground.isClosed) {
    corners.push(getCurvePoint(ground.curve, endU));
    outline.push(getCurvePoint(ground.curve, endU));
  }
  const planes = [
    ...layCrown(ground, proportions, heights),
    ...layGirdle(corners, ground.isClosed, heights.halfGirdle),
    ...layPavilion(ground, proportions, heights),
  ];
  return { planes, outline, isCleft: false };
}
