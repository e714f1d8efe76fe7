/** What a reading can find at most, cheaply: most readings need not be worked out in full. */
import { VIEWS } from "@/lib/gem/point";
import type { Rubric } from "@/lib/plot/rubric";
import type { PlottedModel } from "@/lib/scoring/prepare-plot";
import type { PreparedReference } from "@/lib/scoring/prepare-reference";
import { rateExtent, rateLikeness, rateLocation } from "@/lib/scoring/rate-pair";
import { SEARCH_STEP_DEG } from "@/lib/scoring/reading";

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
      if ((types[index] as number) < 0.5 || model.optional || model.mark.view !== mark.view) return;
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
  /** No less than the support of the turn. */
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

/** The sweep's tallies, by step and, where they are by reference mark as well, at [step * marks + mark]. */
interface Tally {
  /** The most that any plotted mark could earn of each reference mark. */
  readonly best: Float64Array;
  /** 1 where some plotted mark could support the turn by a reference mark. */
  readonly supports: Uint8Array;
  /** How many plotted marks lie near something. */
  readonly nearby: Int32Array;
  /** Whether the mark that is being entered lies near something; cleared for each. */
  readonly isNear: Uint8Array;
}

/**
 * Enters one plotted mark into the tallies. A turn keeps the distance of its centre from the middle of the stone, so it can be
 * near a target only in the turns of one window.
 */
function sweepMark(
  prepared: PreparedReference,
  { mark, geometry }: PlottedModel,
  mirrored: boolean,
  rubric: Rubric,
  tally: Tally,
) {
  const { marks } = prepared;
  const count = marks.length;
  const { isNear } = tally;
  isNear.fill(0);
  const types = prepared.getTypes(mark.characteristic);
  const pRadius = geometry.radius;
  const px = mirrored ? -geometry.centreX : geometry.centreX;
  const py = geometry.centreY;
  const pAngle = mirrored ? Math.PI - geometry.angle : geometry.angle;
  // The turn that lays p on r is the clockwise angle between them in the crown view, the other way in the pavilion.
  const sense = mark.view === VIEWS[0] ? 1 : -1;
  for (const { reference, geometry: target, isStandIn } of prepared.targets[mark.view]) {
    const rRadius = target.radius;
    const spread = (geometry.reach + target.reach) / 2;
    const limit = rubric.far + 2 * spread + SLACK;
    const model = marks[reference];
    if (model === undefined || Math.abs(pRadius - rRadius) >= limit) continue;
    const extent = rateExtent(target.logExtent, geometry.logExtent);
    const likeness =
      rateLikeness(types[reference] as number, extent, rubric) * (isStandIn ? rubric.otherView : 1);
    const worth = model.optional ? 0 : model.weight * Math.min(1, likeness);
    // The window: every turn by which the two centres come within the limit of one another.
    const squares = pRadius * pRadius + rRadius * rRadius;
    const product = 2 * pRadius * rRadius;
    const reachCos = (squares - limit * limit) / (product + Number.MIN_VALUE);
    const half = reachCos <= -1 ? Math.PI : Math.acos(Math.min(1, reachCos)) + SLACK;
    const middle = sense * (pAngle - target.angle);
    const from = Math.ceil((middle - half) / STEP);
    const steps = Math.min(Math.floor((middle + half) / STEP) - from + 1, STEPS);
    const cosMiddle = 2 * (px * target.centreX + py * target.centreY);
    const sinMiddle = 2 * sense * (py * target.centreX - px * target.centreY);
    const zero2 = (rubric.far + spread + SLACK) ** 2;
    const support2 = ((rubric.near + rubric.far) / 2 + spread + 2 * SLACK) ** 2;
    // The tallies of each turn in it.
    let k = ((from % STEPS) + STEPS) % STEPS;
    for (let left = steps; left > 0; left -= 1) {
      isNear[k] = 1;
      const apart2 = squares - (COS[k] as number) * cosMiddle - (SIN[k] as number) * sinMiddle;
      if (apart2 < zero2) {
        const at = k * count + reference;
        if (apart2 <= support2) tally.supports[at] = 1;
        const known = tally.best[at] as number;
        if (worth > known) {
          const location = rateLocation(Math.sqrt(Math.max(0, apart2)) - spread - SLACK, rubric);
          if (worth * location > known) tally.best[at] = worth * location;
        }
      }
      k = k + 1 < STEPS ? k + 1 : 0;
    }
  }
  for (let k = 0; k < STEPS; k += 1) tally.nearby[k] = (tally.nearby[k] as number) + (isNear[k] as number);
}

const UNBOUNDED: Bound = { foundShare: 1, deducted: 0, support: Number.POSITIVE_INFINITY };

/**
 * Bounds for the readings at every 7.5 degrees, all mirrored or none: by turn. A turn that lies between the steps has
 * none. Each reference mark gets the best that any plotted mark could give it; that a mark serves once only is
 * left out of account. Of the strays, those are counted that lie near nothing, and those that are too many.
 */
export function boundReadings(
  prepared: PreparedReference,
  plotted: readonly PlottedModel[],
  mirrored: boolean,
  rubric: Rubric,
): (turnDeg: number) => Bound {
  const count = prepared.marks.length;
  const tally: Tally = {
    best: new Float64Array(STEPS * count),
    supports: new Uint8Array(STEPS * count),
    nearby: new Int32Array(STEPS),
    isNear: new Uint8Array(STEPS),
  };
  const merges = boundMerges(prepared, plotted, rubric.merged);
  for (let k = 0; k < STEPS; k += 1) tally.best.set(merges, k * count);
  for (const model of plotted) sweepMark(prepared, model, mirrored, rubric, tally);
  const least = getLeastCharges(prepared, rubric);
  return (turnDeg) => {
    const steps = turnDeg / SEARCH_STEP_DEG;
    if (!Number.isInteger(steps)) return UNBOUNDED;
    const k = ((steps % STEPS) + STEPS) % STEPS;
    let earned = 0;
    let support = 0;
    for (let at = k * count; at < (k + 1) * count; at += 1) {
      earned += tally.best[at] as number;
      support += tally.supports[at] as number;
    }
    const nearby = tally.nearby[k] as number;
    const charge = least.far * (plotted.length - nearby) + least.any * Math.max(0, nearby - count);
    return {
      foundShare: prepared.weightSum > 0 ? Math.min(1, earned / prepared.weightSum + SLACK) : 1,
      deducted: Math.max(0, Math.min(charge, rubric.deductionCap) / 100 - SLACK),
      support,
    };
  };
}
