import type { Rubric } from "@/lib/plot/rubric";
import { measureDistance } from "@/lib/scoring/measure-distance";
import type { PlottedModel } from "@/lib/scoring/prepare-plot";
import { type PreparedReference, SWEEP_STRIDE, type Target } from "@/lib/scoring/prepare-reference";
import { rateExtent, rateLikeness, rateLocation } from "@/lib/scoring/rate-pair";

/** Widens the first test a little, so that rounding never hides a pair. */
const SLACK = 1e-9;

/** A plotted mark that is worth something for a reference mark. Indices into the two sorted lists of marks. */
export interface Pair {
  readonly reference: number;
  readonly plotted: number;
  /** `d` of scoring.md 1, in girdle widths. */
  readonly distance: number;
  readonly location: number;
  readonly type: number;
  readonly extent: number;
  readonly value: number;
  readonly inOtherView: boolean;
}

/** Whether a plotted mark may find a reference mark, both by index. */
export type MayPair = (reference: number, plotted: number) => boolean;

function isBetter(pair: Pair, known: Pair | undefined): boolean {
  if (known === undefined || pair.value !== known.value)
    return known === undefined || pair.value > known.value;
  return pair.distance < known.distance;
}

/**
 * Every pair with a value above 0 (SPEC 2), ordered by plotted mark, then reference mark. Where a reference mark
 * can be seen at several places, as through several facets from the other side, the place that gives the most
 * counts.
 */
export function listPairs(
  prepared: PreparedReference,
  laid: readonly PlottedModel[],
  rubric: Rubric,
): readonly Pair[] {
  const pairs: Pair[] = [];
  const best: (Pair | undefined)[] = new Array(prepared.marks.length);
  laid.forEach(({ mark, geometry }, plotted) => {
    const types = prepared.getTypes(mark.characteristic);
    const reached: number[] = [];
    const { targets, numbers } = prepared.sweep[mark.view];
    const { centreX, centreY, reach } = geometry;
    for (let t = 0; t < targets.length; t += 1) {
      // No shape is nearer to another than their centres less half of what they reach (boundDistance).
      const dx = (numbers[t * SWEEP_STRIDE + 2] as number) - centreX;
      const dy = (numbers[t * SWEEP_STRIDE + 3] as number) - centreY;
      const limit = rubric.far + (reach + (numbers[t * SWEEP_STRIDE + 1] as number)) / 2 + SLACK;
      if (dx * dx + dy * dy >= limit * limit) continue;
      const target = targets[t] as Target;
      const distance = measureDistance(target.geometry, geometry);
      const location = rateLocation(distance, rubric);
      if (location <= 0) continue;
      const { reference, isStandIn } = target;
      const type = types[reference] as number;
      const extent = rateExtent(target.geometry.logExtent, geometry.logExtent);
      const factor = isStandIn ? rubric.otherView : 1;
      const value = Math.min(1, location * rateLikeness(type, extent, rubric) * factor);
      const pair = { reference, plotted, distance, location, type, extent, value, inOtherView: isStandIn };
      const known = best[reference];
      if (value <= 0 || !isBetter(pair, known)) continue;
      if (known === undefined) reached.push(reference);
      best[reference] = pair;
    }
    for (const reference of reached.sort((a, b) => a - b)) {
      const pair = best[reference];
      if (pair !== undefined) pairs.push(pair);
      best[reference] = undefined;
    }
  });
  return pairs;
}
