/**
 * How far one set of places is from another, whatever the rubric says: OSPA (Schuhmacher, Vo and Vo 2008) and GOSPA
 * with alpha = 2 (Rahmathullah, García-Fernández and Svensson 2017, arXiv 1601.05585).
 */
import type { SetDistance } from "@/lib/plot/score-result";
import { assignPairs, type Edge, toGain } from "@/lib/scoring/assign-pairs";

export interface SetDistanceOptions {
  /** `c`: places this far apart or farther are not paired; girdle widths, or the unit of the places. */
  readonly cutoff: number;
  /** `p`, 1 or more. */
  readonly order: number;
  /** Distance of two places; Euclidean unless given. Infinity for places that can never be the same. */
  readonly getDistance?: (reference: Place, plotted: Place) => number;
}

export type Place = readonly number[];

function getEuclidean(a: Place, b: Place): number {
  return Math.hypot(...a.map((value, i) => value - (b[i] ?? 0)));
}

/** The pairs of the best assignment: the most saved against leaving both places alone. */
function pairPlaces(reference: readonly Place[], plotted: readonly Place[], options: SetDistanceOptions) {
  const { cutoff, order, getDistance = getEuclidean } = options;
  const edges: (Edge & { power: number })[] = [];
  const most = cutoff ** order;
  for (let i = 0; i < reference.length; i += 1) {
    for (let j = 0; j < plotted.length; j += 1) {
      const distance = getDistance(reference[i] as Place, plotted[j] as Place);
      if (!(distance < cutoff)) continue;
      const power = order === 1 ? distance : distance ** order;
      edges.push({ reference: i, plotted: j, gain: toGain((most - power) / most), tie: 0, power });
    }
  }
  return assignPairs(edges);
}

/**
 * Both distances, and GOSPA's parts as p-th powers: location, places of the reference without a partner, and plotted
 * places without one. A pair exactly at the cut-off counts as two places without a partner. Two empty sets are
 * 0 apart; OSPA from an empty set to any other is the cut-off.
 */
export function measureSetDistance(
  reference: readonly Place[],
  plotted: readonly Place[],
  options: SetDistanceOptions,
): SetDistance {
  const { cutoff, order } = options;
  const pairs = pairPlaces(reference, plotted, options);
  const location = pairs.reduce((sum, { power }) => sum + power, 0);
  const alone = cutoff ** order / 2;
  const overlooked = alone * (reference.length - pairs.length);
  const strays = alone * (plotted.length - pairs.length);
  const larger = Math.max(reference.length, plotted.length);
  const whole = location + cutoff ** order * (larger - pairs.length);
  return {
    ospa: larger === 0 ? 0 : (whole / larger) ** (1 / order),
    gospa: (location + overlooked + strays) ** (1 / order),
    location,
    overlooked,
    strays,
  };
}

/** GOSPA as a likeness of two sets, 1 for equal sets and 0 where nothing is paired; two empty sets are alike. */
export function getSetLikeness(
  { location, overlooked, strays }: SetDistance,
  places: number,
  { cutoff, order }: Pick<SetDistanceOptions, "cutoff" | "order">,
): number {
  return places === 0
    ? 1
    : Math.max(0, 1 - (location + overlooked + strays) / ((cutoff ** order / 2) * places));
}
