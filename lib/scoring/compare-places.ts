import { VIEWS } from "@/lib/gem/point";
import type { Rubric } from "@/lib/plot/rubric";
import type { SetDistance } from "@/lib/plot/score-result";
import type { Matching } from "@/lib/scoring/match-marks";
import { getSetLikeness, measureSetDistance, type Place } from "@/lib/scoring/measure-set-distance";
import type { PlottedModel } from "@/lib/scoring/prepare-plot";
import type { PreparedReference } from "@/lib/scoring/prepare-reference";

/** The order p of the distances that are reported: at 1 their parts add up in girdle widths. */
const ORDER = 1;

const toPlace = ({ mark, geometry }: Pick<PlottedModel, "mark" | "geometry">): Place => [
  geometry.centreX,
  geometry.centreY,
  VIEWS.indexOf(mark.view),
];

/** Places of different views are never the same place. */
function getPlaceDistance(reference: Place, plotted: Place): number {
  if (reference[2] !== plotted[2]) return Number.POSITIVE_INFINITY;
  const dx = (reference[0] as number) - (plotted[0] as number);
  const dy = (reference[1] as number) - (plotted[1] as number);
  return Math.sqrt(dx * dx + dy * dy);
}

/**
 * The distance between the centres of a plot's marks and those of the reference, view by view, cut off at the rubric's `far`;
 * optional reference marks, and what is set against them, left out. `likeness` is 0…1.
 */
export function comparePlaces(
  prepared: PreparedReference,
  laid: readonly PlottedModel[],
  { setAside }: Pick<Matching, "setAside">,
  { far }: Pick<Rubric, "far">,
): { distance: SetDistance; likeness: number } {
  const aside = new Set(setAside.map(({ plotted }) => plotted));
  const reference = prepared.marks.filter(({ optional }) => !optional).map(toPlace);
  const plotted = laid.filter((_, index) => !aside.has(index)).map(toPlace);
  const options = { cutoff: far, order: ORDER, getDistance: getPlaceDistance };
  const distance = measureSetDistance(reference, plotted, options);
  return { distance, likeness: getSetLikeness(distance, reference.length + plotted.length, options) };
}
