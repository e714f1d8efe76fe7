/** One pass over the plotted marks that says, for every turn at once, what each could find (SPEC 3.4). */
import { VIEWS } from "@/lib/gem/point";
import type { Rubric } from "@/lib/plot/rubric";
import type { PlottedModel } from "@/lib/scoring/prepare-plot";
import { type PreparedReference, SWEEP_STRIDE, type Target } from "@/lib/scoring/prepare-reference";
import { LIKE_TYPE, rateExtent, rateLikeness, rateLocation } from "@/lib/scoring/rate-pair";
import { type Reading, SEARCH_STEP_DEG } from "@/lib/scoring/reading";

export const STEPS = 360 / SEARCH_STEP_DEG;
const STEP = (2 * Math.PI) / STEPS;
const COS = Float64Array.from({ length: STEPS }, (_, k) => Math.cos(k * STEP));
const SIN = Float64Array.from({ length: STEPS }, (_, k) => Math.sin(k * STEP));
/** Widens every window a little, so that rounding never hides a reading. */
export const SLACK = 1e-6;

/** The sweep's tallies of one side, by step and, where they are by reference mark as well, at [step * marks + mark]. */
export interface Tally {
  /** The most that any plotted mark could earn of each reference mark. */
  readonly best: Float64Array;
  /** 1 where some plotted mark could support the turn by a reference mark, 3 where one of a like kind could. */
  readonly supports: Uint8Array;
  /** How many plotted marks lie near something, and the last one that was entered so, from 1. */
  readonly nearby: Int32Array;
  readonly last: Int32Array;
  /** How many plotted marks could support the turn by a reference mark of a like kind, and the last one that was entered so. */
  readonly alike: Int32Array;
  readonly lastAlike: Int32Array;
}

/**
 * Enters one plotted mark, counted from 1, into the tallies: as drawn and, where there is a second one, mirrored. A turn keeps
 * the distance of its centre from the middle of the stone, so it can be near a target only in the turns of one window. All in
 * one loop: numbers handed from function to function some ten thousand times a plot cost more than what is done with them.
 */
export function sweepMark(
  prepared: PreparedReference,
  { mark, geometry }: PlottedModel,
  ordinal: number,
  rubric: Rubric,
  sides: readonly Tally[],
) {
  const count = prepared.marks.length;
  const types = prepared.getTypes(mark.characteristic);
  const { near, far } = rubric;
  const { radius: pRadius, reach: pReach, centreX: px, centreY: py, angle: pAngle } = geometry;
  // The turn that lays p on r is the clockwise angle between them in the crown view, the other way in the pavilion.
  const sense = mark.view === VIEWS[0] ? 1 : -1;
  const { targets, numbers } = prepared.sweep[mark.view];
  for (let t = 0; t < targets.length; t += 1) {
    const rRadius = numbers[t * SWEEP_STRIDE] as number;
    const spread = (pReach + (numbers[t * SWEEP_STRIDE + 1] as number)) / 2;
    const limit = far + 2 * spread + SLACK;
    if (Math.abs(pRadius - rRadius) >= limit) continue;
    const rx = numbers[t * SWEEP_STRIDE + 2] as number;
    const ry = numbers[t * SWEEP_STRIDE + 3] as number;
    const rAngle = numbers[t * SWEEP_STRIDE + 4] as number;
    const weight = numbers[t * SWEEP_STRIDE + 5] as number;
    const extent = rateExtent(numbers[t * SWEEP_STRIDE + 6] as number, geometry.logExtent);
    const { reference, isStandIn } = targets[t] as Target;
    const likeness =
      rateLikeness(types[reference] as number, extent, rubric) * (isStandIn ? rubric.otherView : 1);
    const worth = weight * Math.min(1, likeness);
    const isAlike = (types[reference] as number) >= LIKE_TYPE;
    // The window: every turn by which the two centres come within the limit of one another.
    const squares = pRadius * pRadius + rRadius * rRadius;
    const reachCos = (squares - limit * limit) / (2 * pRadius * rRadius + Number.MIN_VALUE);
    const half = reachCos <= -1 ? Math.PI : Math.acos(Math.min(1, reachCos)) + SLACK;
    const zero = far + spread + SLACK;
    const support = (near + far) / 2 + spread + 2 * SLACK;
    for (let side = 0; side < sides.length; side += 1) {
      const { best, supports, nearby, last, alike, lastAlike } = sides[side] as Tally;
      const x = side === 0 ? px : -px;
      const middle = sense * ((side === 0 ? pAngle : Math.PI - pAngle) - rAngle);
      const from = Math.ceil((middle - half) / STEP);
      const steps = Math.min(Math.floor((middle + half) / STEP) - from + 1, STEPS);
      // In a turn a the square of the distance is squares - cos a * cosine - sin a * sine.
      const cosine = 2 * (x * rx + py * ry);
      const sine = 2 * sense * (py * rx - x * ry);
      let k = ((from % STEPS) + STEPS) % STEPS;
      for (let left = steps; left > 0; left -= 1) {
        if (last[k] !== ordinal) {
          last[k] = ordinal;
          nearby[k] = (nearby[k] as number) + 1;
        }
        const apart2 = squares - (COS[k] as number) * cosine - (SIN[k] as number) * sine;
        if (apart2 < zero * zero) {
          const at = k * count + reference;
          if (apart2 <= support * support) {
            supports[at] = (supports[at] as number) | (isAlike ? 3 : 1);
            if (isAlike && lastAlike[k] !== ordinal) {
              lastAlike[k] = ordinal;
              alike[k] = (alike[k] as number) + 1;
            }
          }
          const known = best[at] as number;
          if (worth > known) {
            const location = rateLocation(Math.sqrt(Math.max(0, apart2)) - spread - SLACK, rubric);
            if (worth * location > known) best[at] = worth * location;
          }
        }
        k = k + 1 < STEPS ? k + 1 : 0;
      }
    }
  }
}

/** An empty tally, but for what merges may find. */
export function startTally(merges: Float64Array): Tally {
  const count = merges.length;
  const tally: Tally = {
    best: new Float64Array(STEPS * count),
    supports: new Uint8Array(STEPS * count),
    nearby: new Int32Array(STEPS),
    last: new Int32Array(STEPS),
    alike: new Int32Array(STEPS),
    lastAlike: new Int32Array(STEPS),
  };
  for (let k = 0; k < STEPS; k += 1) tally.best.set(merges, k * count);
  return tally;
}

/** Where a reading stands in a side's tally; null for a turn that lies between its steps. */
export function toStep({ turnDeg }: Reading): number | null {
  const steps = turnDeg / SEARCH_STEP_DEG;
  return Number.isInteger(steps) ? ((steps % STEPS) + STEPS) % STEPS : null;
}
