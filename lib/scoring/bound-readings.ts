/** What a reading can find at most, cheaply: most readings need not be worked out in full. */
import { VIEWS } from "@/lib/gem/point";
import type { Rubric } from "@/lib/plot/rubric";
import type { PlottedModel } from "@/lib/scoring/prepare-plot";
import type { PreparedReference } from "@/lib/scoring/prepare-reference";
import { rateExtent, rateLikeness, rateLocation } from "@/lib/scoring/rate-pair";
import { type Reading, SEARCH_STEP_DEG } from "@/lib/scoring/reading";

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
    const radius = Math.hypot(geometry.centreX, geometry.centreY);
    const held = prepared.marks.flatMap((model, index) => {
      const { centreX, centreY } = model.geometry;
      const isHeld = Math.abs(Math.hypot(centreX, centreY) - radius) <= geometry.reach + SLACK;
      const type = types[index] as number;
      return isHeld && type >= 0.5 && !model.optional && model.mark.view === mark.view
        ? [{ index, type, model }]
        : [];
    });
    if (held.length < 2) continue;
    for (const { index, type, model } of held) {
      bounds[index] = Math.max(bounds[index] as number, model.weight * merged * type);
    }
  }
  return bounds;
}

/**
 * Upper bounds of `F` for the readings at every 7.5 degrees, all mirrored or none; `[k]` is that of the turn by k steps.
 *
 * A turn keeps the distance of a mark's centre from the middle of the stone, so a pair can be near only in the turns of one
 * window. Each reference mark gets the best that any plotted mark could give it there; that a mark serves once only
 * is left out of account.
 */
export function boundReadings(
  prepared: PreparedReference,
  plotted: readonly PlottedModel[],
  mirrored: boolean,
  rubric: Rubric,
): Float64Array {
  const count = prepared.marks.length;
  const bounds = new Float64Array(STEPS);
  if (prepared.weightSum === 0) return bounds.fill(1);
  const merges = boundMerges(prepared, plotted, rubric.merged);
  const best = new Float64Array(STEPS * count);
  for (let k = 0; k < STEPS; k += 1) best.set(merges, k * count);
  for (const { mark, geometry } of plotted) {
    const types = prepared.getTypes(mark.characteristic);
    const px = mirrored ? -geometry.centreX : geometry.centreX;
    const py = geometry.centreY;
    const pRadius = Math.sqrt(px * px + py * py);
    // The turn that lays p on r is the clockwise angle between them in the crown view, the other way in the pavilion.
    const sense = mark.view === VIEWS[0] ? 1 : -1;
    for (const { reference, geometry: target, isStandIn } of prepared.targets[mark.view]) {
      const model = prepared.marks[reference];
      if (model === undefined || model.optional) continue;
      const spread = (geometry.reach + target.reach) / 2;
      const limit = rubric.far + spread + SLACK;
      const { centreX: rx, centreY: ry } = target;
      const rRadius = Math.sqrt(rx * rx + ry * ry);
      if (Math.abs(pRadius - rRadius) >= limit) continue;
      const likeness = rateLikeness(
        types[reference] as number,
        rateExtent(target.logExtent, geometry.logExtent),
        rubric,
      );
      const worth = model.weight * Math.min(1, likeness * (isStandIn ? rubric.otherView : 1));
      const squares = pRadius * pRadius + rRadius * rRadius;
      const dot = px * rx + py * ry;
      const cross = sense * (rx * py - ry * px);
      const reachCos = (squares - limit * limit) / (2 * pRadius * rRadius + Number.MIN_VALUE);
      const half = reachCos <= -1 ? Math.PI : Math.acos(Math.min(1, reachCos)) + SLACK;
      const middle = Math.atan2(cross, dot);
      const from = Math.ceil((middle - half) / STEP);
      const to = Math.min(Math.floor((middle + half) / STEP), from + STEPS - 1);
      for (let step = from; step <= to; step += 1) {
        const k = ((step % STEPS) + STEPS) % STEPS;
        const along = (COS[k] as number) * dot + (SIN[k] as number) * cross;
        const apart = Math.sqrt(Math.max(0, squares - 2 * along)) - spread - SLACK;
        const value = worth * rateLocation(apart, rubric);
        const at = k * count + reference;
        if (value > (best[at] as number)) best[at] = value;
      }
    }
  }
  for (let k = 0; k < STEPS; k += 1) {
    let sum = 0;
    for (let r = 0; r < count; r += 1) sum += best[k * count + r] as number;
    bounds[k] = Math.min(1, sum / prepared.weightSum);
  }
  return bounds;
}

/** The bound of one reading out of those of its kind; 1 for a turn that lies between the steps. */
export function getBound(bounds: Float64Array, { turnDeg }: Reading): number {
  const steps = turnDeg / SEARCH_STEP_DEG;
  if (!Number.isInteger(steps)) return 1;
  return bounds[((steps % STEPS) + STEPS) % STEPS] ?? 1;
}
