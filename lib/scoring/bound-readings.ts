/** What a reading can find at most, cheaply: most readings need not be worked out in full. */
import { VIEWS, type View } from "@/lib/gem/point";
import type { Rubric } from "@/lib/plot/rubric";
import type { PlottedModel } from "@/lib/scoring/prepare-plot";
import { type PreparedReference, SWEEP_STRIDE, type Target } from "@/lib/scoring/prepare-reference";
import { LIKE_TYPE, rateExtent, rateLikeness, rateLocation } from "@/lib/scoring/rate-pair";
import { type Laying, type Reading, SEARCH_STEP_DEG } from "@/lib/scoring/reading";

const STEPS = 360 / SEARCH_STEP_DEG;
const STEP = (2 * Math.PI) / STEPS;
const COS = Float64Array.from({ length: STEPS }, (_, k) => Math.cos(k * STEP));
const SIN = Float64Array.from({ length: STEPS }, (_, k) => Math.sin(k * STEP));
/** Widens every window a little, so that rounding never hides a reading. */
const SLACK = 1e-6;

/** What an outline drawn round several marks may find of each, whatever the turn. */
function boundMerges(
  prepared: PreparedReference,
  plotted: readonly PlottedModel[],
  merged: number,
): Float64Array {
  const bounds = new Float64Array(prepared.marks.length);
  for (const { mark, geometry } of plotted) {
    if (geometry.kind !== "outline") continue;
    const types = prepared.getTypes(mark.characteristic);
    const held: number[] = [];
    prepared.marks.forEach((model, index) => {
      if ((types[index] as number) < LIKE_TYPE || model.optional || model.mark.view !== mark.view) return;
      if (Math.abs(model.geometry.radius - geometry.radius) <= geometry.reach + SLACK) held.push(index);
    });
    if (held.length < 2) continue;
    for (const index of held) {
      const worth = (prepared.marks[index]?.weight ?? 0) * merged * (types[index] as number);
      if (worth > (bounds[index] as number)) bounds[index] = worth;
    }
  }
  return bounds;
}

/** What a reading can come to at most. */
export interface Bound {
  /** No less than `F`, 0…1. */
  readonly foundShare: number;
  /** No more than what the strays take off, 0…1. */
  readonly deducted: number;
  /** No less than the support of the reading; of one view alone, by its own marks of a like kind. */
  readonly support: number;
}

/** The least that a stray can cost: any, and one that lies near no reference mark, so is no fragment and no double. */
function getLeastCharges(
  { decoys }: PreparedReference,
  { deductions }: Rubric,
): { any: number; far: number } {
  const { dust, echo, glint, unexplained } = deductions;
  const any = Math.min(...Object.values(deductions));
  return { any, far: decoys.length > 0 ? any : Math.min(dust, echo, glint, unexplained) };
}

/** The sweep's tallies of one side, by step and, where they are by reference mark as well, at [step * marks + mark]. */
interface Tally {
  /** The most that any plotted mark could earn of each reference mark. */
  readonly best: Float64Array;
  /** 1 where some plotted mark could support the turn by a reference mark. */
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
function sweepMark(
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
            supports[at] = 1;
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

const UNBOUNDED: Bound = { foundShare: 1, deducted: 0, support: Number.POSITIVE_INFINITY };

function startTally(merges: Float64Array): Tally {
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
function toStep({ turnDeg }: Reading): number | null {
  const steps = turnDeg / SEARCH_STEP_DEG;
  return Number.isInteger(steps) ? ((steps % STEPS) + STEPS) % STEPS : null;
}

/** The bound of a laying; `alone` names the view that is read alone, where one is. */
export type GetBound = (laying: Laying, alone?: View) => Bound;

/**
 * Bounds for the readings at every 7.5 degrees, of the plot as drawn and, `withMirrored`, mirrored, and for layings that read
 * each view by one of its own. A turn that lies between the steps has none, nor has a mirrored reading that was not asked for.
 * Each reference mark gets the best that any plotted mark could give it; that a mark serves once only is left out of account. Of
 * the strays, those are counted that lie near nothing, and those that are too many.
 */
export function boundReadings(
  prepared: PreparedReference,
  plotted: readonly PlottedModel[],
  withMirrored: boolean,
  rubric: Rubric,
): GetBound {
  const count = prepared.marks.length;
  const merges = boundMerges(prepared, plotted, rubric.merged);
  const startSides = () => [startTally(merges), ...(withMirrored ? [startTally(merges)] : [])];
  const sides: Record<View, Tally[]> = { crown: startSides(), pavilion: startSides() };
  plotted.forEach((model, index) => {
    sweepMark(prepared, model, index + 1, rubric, sides[model.mark.view]);
  });
  const least = getLeastCharges(prepared, rubric);
  return ({ crown, pavilion }, alone) => {
    const [a, b] = [sides.crown[Number(crown.mirrored)], sides.pavilion[Number(pavilion.mirrored)]];
    const [atCrown, atPavilion] = [toStep(crown), toStep(pavilion)];
    if (a === undefined || b === undefined || atCrown === null || atPavilion === null) return UNBOUNDED;
    let earned = 0;
    let support = 0;
    for (let i = 0; i < count; i += 1) {
      const [ia, ib] = [atCrown * count + i, atPavilion * count + i];
      earned += Math.max(a.best[ia] as number, b.best[ib] as number);
      support += (a.supports[ia] as number) | (b.supports[ib] as number);
    }
    if (alone !== undefined) support = (alone === "crown" ? a.alike[atCrown] : b.alike[atPavilion]) as number;
    const nearby = (a.nearby[atCrown] as number) + (b.nearby[atPavilion] as number);
    const charge = least.far * (plotted.length - nearby) + least.any * Math.max(0, nearby - count);
    return {
      foundShare: prepared.weightSum > 0 ? Math.min(1, earned / prepared.weightSum + SLACK) : 1,
      deducted: Math.max(0, Math.min(charge, rubric.deductionCap) / 100 - SLACK),
      support,
    };
  };
}
