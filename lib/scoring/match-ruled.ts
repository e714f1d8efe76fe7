/** The matching that an instructor's rulings leave (SPEC 10.2, 10.3). */
import type { Rubric } from "@/lib/plot/rubric";
import { listPairs, type MayPair, type Pair } from "@/lib/scoring/list-pairs";
import { getFoundShare, type Matching, matchMarks } from "@/lib/scoring/match-marks";
import { measureDistance } from "@/lib/scoring/measure-distance";
import type { PlottedModel } from "@/lib/scoring/prepare-plot";
import type { PreparedReference, Target } from "@/lib/scoring/prepare-reference";
import { rateExtent, rateLikeness, rateLocation } from "@/lib/scoring/rate-pair";
import type { Laid, Rulings } from "@/lib/scoring/sort-rulings";
import { standAt } from "@/lib/scoring/stone-optics";

/** Where a reference mark may be seen in a view; one that has no place there is seen straight through the stone. */
function listTargets(prepared: PreparedReference, reference: number, { mark }: PlottedModel): Target[] {
  const targets = prepared.targets[mark.view].filter((target) => target.reference === reference);
  const geometry = prepared.marks[reference]?.geometry;
  if (targets.length > 0 || geometry === undefined) return targets;
  return [{ reference, geometry: standAt(geometry, null), isStandIn: true }];
}

/** The pair that a ruling makes, rated as any other but for the place, which the ruling may give. */
function ratePair(
  prepared: PreparedReference,
  laid: readonly PlottedModel[],
  reference: number,
  { plotted, place }: Laid,
  rubric: Rubric,
): Pair[] {
  const model = laid[plotted];
  if (model === undefined) return [];
  const type = prepared.getTypes(model.mark.characteristic)[reference] ?? 0;
  const pairs = listTargets(prepared, reference, model).map(({ geometry, isStandIn }): Pair => {
    const distance = measureDistance(geometry, model.geometry);
    const measured = rateLocation(distance, rubric);
    const location = place === "full" ? 1 : place === "half" ? Math.max(0.5, measured) : measured;
    const extent = rateExtent(geometry.logExtent, model.geometry.logExtent);
    const factor = isStandIn ? rubric.otherView : 1;
    const value = Math.min(1, location * rateLikeness(type, extent, rubric) * factor);
    return { reference, plotted, distance, location, type, extent, value, inOtherView: isStandIn };
  });
  return pairs.sort((a, b) => b.value - a.value || a.distance - b.distance).slice(0, 1);
}

/**
 * What was ruled together is found (or set aside, where the reference mark is optional), what was ruled apart is not, and
 * the rest is matched for the most points as ever.
 */
export function matchRuled(
  prepared: PreparedReference,
  laid: readonly PlottedModel[],
  { together, apart }: Rulings,
  rubric: Rubric,
): Matching {
  const taken = new Set([...together.values()].map(({ plotted }) => plotted));
  const mayPair: MayPair = (reference, plotted) =>
    !together.has(reference) &&
    !taken.has(plotted) &&
    apart.get(reference)?.some((one) => one.plotted === plotted) !== true;
  const pairs = listPairs(prepared, laid, rubric).filter((pair) => mayPair(pair.reference, pair.plotted));
  const rest = matchMarks(prepared, laid, pairs, rubric, mayPair);
  const ruled = [...together].flatMap(([reference, one]) => ratePair(prepared, laid, reference, one, rubric));
  const isOptional = ({ reference }: Pair) => prepared.marks[reference]?.optional === true;
  const matched = [...rest.matched, ...ruled.filter((pair) => !isOptional(pair))].sort(
    (a, b) => a.reference - b.reference,
  );
  return {
    ...rest,
    matched,
    setAside: [...rest.setAside, ...ruled.filter(isOptional)],
    leftover: rest.leftover.filter((plotted) => !taken.has(plotted)),
    foundShare: getFoundShare(prepared, [...matched, ...rest.merges]),
  };
}
