/** A verdict after an instructor's overrules (SPEC 10): the engine's own reading, ruled on. */
import type { DottingBurst } from "@/lib/plot/find-dotting";
import type { Overrule, OverruleFate } from "@/lib/plot/overrule";
import type { Rubric } from "@/lib/plot/rubric";

import { findCauses, getCharge, type Stray } from "@/lib/scoring/find-causes";
import { matchRuled } from "@/lib/scoring/match-ruled";
import type { PreparedReference } from "@/lib/scoring/prepare-reference";
import type { GradeRating } from "@/lib/scoring/rate-grades";
import { lapses, NO_RULINGS, type Rulings, sortRulings } from "@/lib/scoring/sort-rulings";
import type { Outcome } from "@/lib/scoring/work-out";

/** What overrules are applied to. */
export interface Ruled {
  readonly prepared: PreparedReference;
  readonly counted: Outcome;
  readonly grades: readonly GradeRating[];
}

export interface OverruledVerdict extends Pick<Ruled, "counted" | "grades"> {
  readonly rulings: Rulings;
  readonly fates: readonly OverruleFate[];
}

function ruleStray(stray: Stray, { causes }: Rulings, rubric: Rubric): Stray {
  const ruling = causes.get(stray.plotted);
  if (ruling === undefined) return stray;
  const isHeld = ruling.cause !== null;
  return {
    ...stray,
    cause: ruling.cause ?? stray.cause,
    charge: ruling.cause === null ? 0 : getCharge(ruling.cause, rubric),
    ruled: { reason: ruling.reason, isHeld, before: stray.cause },
  };
}

function ruleGrade(rating: GradeRating, { grades }: Rulings): GradeRating {
  const ruling = grades.get(rating.property);
  if (ruling === undefined) return rating;
  return { ...rating, earned: rating.share * ruling.credit, ruled: { reason: ruling.reason } };
}

/** A ruling on the cause of a mark that is no stray now is listed, never dropped. */
function judgeFates(
  fates: readonly OverruleFate[],
  { causes }: Rulings,
  strays: readonly Stray[],
): OverruleFate[] {
  const stray = new Set(strays.map(({ plotted }) => plotted));
  const idle = new Set(
    [...causes].flatMap(([plotted, { overruleId }]) => (stray.has(plotted) ? [] : [overruleId])),
  );
  return fates.map((fate) =>
    fate.applies && idle.has(fate.overruleId) ? lapses(fate.overruleId, "the mark is no stray now") : fate,
  );
}

/** Applies overrules, in the order in which they were made. Without any, the verdict is given back as it is. */
export function applyOverrules(
  { prepared, counted, grades }: Ruled,
  overrules: readonly Overrule[],
  bursts: readonly DottingBurst[],
  rubric: Rubric,
): OverruledVerdict {
  if (overrules.length === 0) return { counted, grades, rulings: NO_RULINGS, fates: [] };
  const { laid } = counted;
  const { rulings, fates } = sortRulings(overrules, prepared, laid);
  const isRematched = rulings.together.size + rulings.apart.size > 0;
  const matching = isRematched ? matchRuled(prepared, laid, rulings, rubric) : counted.matching;
  const strays = (
    isRematched ? findCauses(prepared, laid, matching, bursts, rubric) : [...counted.strays]
  ).map((stray) => ruleStray(stray, rulings, rubric));
  return {
    counted: { ...counted, matching, strays },
    grades: grades.map((grade) => ruleGrade(grade, rulings)),
    rulings,
    fates: judgeFates(fates, rulings, strays),
  };
}
