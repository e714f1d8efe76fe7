import { AppError } from "@/lib/base/app-error";
import type { CutPlan } from "@/lib/gem/cut-plan";
import { type FacetPlane, type FacetSide, toFacetPlane } from "@/lib/gem/facet-plane";
import { layGirdle } from "@/lib/gem/lay-girdle";
import type { Point } from "@/lib/gem/point";
import { getProportion, type Proportions } from "@/lib/gem/proportions";

/** A side of a step cut's outline. */
interface StepSide {
  /** Outward, horizontal, unit length. */
  readonly normal: Point;
  /** From the centre to the side, in girdle widths. */
  readonly distance: number;
  /** How fast the side moves in as the stone narrows: 1 for the straight sides. */
  readonly pace: number;
}

/** Four sides, clockwise from 12 o'clock, and between them the cut-off corners where there are any. */
function listSides(length: number, corner: number): StepSide[] {
  const side = (x: number, y: number, distance: number): StepSide => ({ normal: [x, y], distance, pace: 1 });
  const cut = (x: number, y: number): StepSide => ({
    normal: [x * Math.SQRT1_2, y * Math.SQRT1_2],
    distance: (0.5 + length / 2 - corner) * Math.SQRT1_2,
    pace: Math.SQRT2 * (1 - corner),
  });
  const straight = [side(0, 1, length / 2), side(1, 0, 0.5), side(0, -1, length / 2), side(-1, 0, 0.5)];
  if (corner === 0) return straight;
  const corners = [cut(1, 1), cut(1, -1), cut(-1, -1), cut(-1, 1)];
  return straight.flatMap((one, i) => [one, corners[i] as StepSide]);
}

/** The corners of the outline, clockwise. */
export function listOutlineCorners(length: number, corner: number): Point[] {
  const [w, l] = [0.5, length / 2];
  if (corner === 0) {
    return [
      [w, l],
      [w, -l],
      [-w, -l],
      [-w, l],
    ];
  }
  return [
    [-w + corner, l],
    [w - corner, l],
    [w, l - corner],
    [w, -l + corner],
    [w - corner, -l],
    [-w + corner, -l],
    [-w, -l + corner],
    [-w, l - corner],
  ];
}

interface Flight {
  readonly side: FacetSide;
  readonly steps: number;
  /** Of the middle of the flight, in degrees. */
  readonly angleDeg: number;
  readonly dropDeg: number;
  /** How far the straight sides move in from the girdle to the end of the flight. */
  readonly inset: number;
  readonly halfGirdle: number;
}

/** Outside these a step is no facet of crown or pavilion. */
const LEAST_STEP_DEG = 3;
const MOST_STEP_DEG = 85;

function refuseStep(side: FacetSide, step: number, angleDeg: number): never {
  const message = `step ${step + 1} of the ${side} would stand at ${angleDeg} degrees; take fewer steps or a smaller difference between them`;
  throw new AppError("bad-input", `No stone can be cut to these proportions: ${message}.`, [
    { path: "stepDropDeg", message },
  ]);
}

/**
 * A flight of steps from the girdle inward, the first the steepest, each flatter by the drop; and its height.
 * Steps are equally wide as seen from above. Every side keeps the same levels, so corners, moving in at their
 * own pace, are less steep than sides and shrink to nought just where the keel begins.
 */
function layFlight(sides: readonly StepSide[], flight: Flight): { planes: FacetPlane[]; height: number } {
  const sign = flight.side === "crown" ? 1 : -1;
  const run = flight.inset / flight.steps;
  const planes: FacetPlane[] = [];
  let height = 0;
  for (let step = 0; step < flight.steps; step += 1) {
    const angleDeg = flight.angleDeg + flight.dropDeg * ((flight.steps - 1) / 2 - step);
    if (angleDeg < LEAST_STEP_DEG || angleDeg > MOST_STEP_DEG) refuseStep(flight.side, step, angleDeg);
    const slope = Math.tan((angleDeg * Math.PI) / 180);
    for (const { normal, distance, pace } of sides) {
      const rise = slope / pace;
      const at = distance - pace * run * step;
      planes.push(
        toFacetPlane(
          `${flight.side}-step-${step + 1}`,
          flight.side,
          [normal[0] * rise, normal[1] * rise, sign],
          [normal[0] * at, normal[1] * at, sign * (flight.halfGirdle + height)],
        ),
      );
    }
    height += slope * run;
  }
  return { planes, height };
}

function planSteps(proportions: Proportions, corner: number): CutPlan {
  const get = (key: Parameters<typeof getProportion>[1]) => getProportion(proportions, key);
  const length = get("lengthToWidth");
  const sides = listSides(length, corner);
  const halfGirdle = get("girdlePct") / 200;
  const dropDeg = get("stepDropDeg");
  const crown = layFlight(sides, {
    side: "crown",
    steps: get("crownSteps"),
    angleDeg: get("crownAngleDeg"),
    dropDeg,
    inset: 0.5 - get("tablePct") / 200,
    halfGirdle,
  });
  const culet = get("culetPct") / 100;
  const pavilion = layFlight(sides, {
    side: "pavilion",
    steps: get("pavilionSteps"),
    angleDeg: get("pavilionAngleDeg"),
    dropDeg,
    inset: 0.5 - culet / 2,
    halfGirdle,
  });
  const corners = listOutlineCorners(length, corner);
  const bottom = -halfGirdle - pavilion.height;
  const planes = [
    toFacetPlane("table", "crown", [0, 0, 1], [0, 0, halfGirdle + crown.height]),
    ...crown.planes,
    ...layGirdle(corners, true, halfGirdle),
    ...pavilion.planes,
    ...(culet > 0 ? [toFacetPlane("culet", "pavilion", [0, 0, -1], [0, 0, bottom])] : []),
  ];
  return { planes, outline: corners, isCleft: false };
}

/**
 * The emerald cut, long from 12 to 6 o'clock, and the square emerald cut: steps on eight sides, three on crown
 * and pavilion unless said otherwise: 1 + 24 crown, 8 girdle and 24 pavilion facets, the 57 of check-values.md
 * 2.4 (50 is also printed), and the culet, which makes the 58 of the original square cut (72 and 74 are
 * modern). Crown and pavilion angle are those of the middle of the flight; table and culet are measured across
 * the width. Without a culet the longer stone ends in a keel.
 */
export function planEmerald(proportions: Proportions): CutPlan {
  return planSteps(proportions, getProportion(proportions, "cornerPct") / 100);
}

/**
 * The baguette: steps on four sides with sharp corners, long from 12 to 6 o'clock; one step on the crown, two
 * on the pavilion and a flat culet along the keel: 5 + 9 = 14 facets without the girdle's four, the count of
 * check-values.md 2.4, which does not say how they are shared out.
 */
export function planBaguette(proportions: Proportions): CutPlan {
  return planSteps(proportions, 0);
}
