/** What to look at to tell two stones apart: a feature that one has and the other lacks (SPEC 8.7). */
import { locatePoint } from "@/lib/gem/locate-point";
import { type Point, turnPoint } from "@/lib/gem/point";
import type { Rubric } from "@/lib/plot/rubric";
import type { TellingFeature } from "@/lib/plot/stone-check";
import type { Candidate } from "@/lib/scoring/check-candidate";
import type { ReferenceModel } from "@/lib/scoring/prepare-reference";

/** Where a feature of the reference lies with the stone held as it was when it was plotted. */
function toHand({ mark, geometry }: ReferenceModel, turnDeg: number): Point {
  return turnPoint(mark.view, [geometry.centreX, geometry.centreY], -turnDeg);
}

/** How far it is to the nearest feature of the other stone in the same view; girdle widths, 1 where there is none. */
function getGap(at: Point, view: string, other: Candidate): number {
  const gaps = other.prepared.marks
    .filter(({ mark }) => mark.view === view)
    .map((model) => {
      const [x, y] = toHand(model, other.turnDeg);
      return Math.hypot(x - at[0], y - at[1]) - model.geometry.reach;
    });
  return Math.min(1, ...gaps);
}

function findTelling(own: Candidate, other: Candidate, { far }: Rubric): TellingFeature | null {
  let best: { worth: number; model: ReferenceModel; at: Point } | null = null;
  own.prepared.marks.forEach((model, index) => {
    if (own.seen.has(index) || model.optional) return;
    const at = toHand(model, own.turnDeg);
    if (getGap(at, model.mark.view, other) < far) return;
    // What weighs more and is larger is seen more surely.
    const worth = model.weight * (1 + model.geometry.extent / far);
    if (best === null || worth > best.worth) best = { worth, model, at };
  });
  if (best === null) return null;
  const { model, at } = best as { model: ReferenceModel; at: Point };
  return {
    label: own.label,
    lackedBy: other.label,
    view: model.mark.view,
    characteristic: model.mark.characteristic,
    place: locatePoint(own.prepared.solid, model.mark.view, at).words,
  };
}

/** At most one feature of each of the two that was not plotted yet and that the other has nothing near. */
export function findTellingFeatures(first: Candidate, second: Candidate, rubric: Rubric): TellingFeature[] {
  return [findTelling(first, second, rubric), findTelling(second, first, rubric)].filter(
    (one) => one !== null,
  );
}
