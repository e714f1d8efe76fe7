/** Overrules made ready for one plot and one reference: which of them apply, and to what (SPEC 10.1, 10.6). */
import type { GradedProperty } from "@/lib/plot/grades";
import type { Cause } from "@/lib/plot/mark";
import { isReplacedBy, type Overrule, type OverruleFate, type PLACE_CREDITS } from "@/lib/plot/overrule";
import type { PlottedModel } from "@/lib/scoring/prepare-plot";
import type { PreparedReference } from "@/lib/scoring/prepare-reference";

export interface Laid {
  readonly plotted: number;
  readonly reason: string;
  readonly place: (typeof PLACE_CREDITS)[number];
}

/** Rulings by index into the sorted marks. */
export interface Rulings {
  /** By reference mark: the plotted mark that was laid to it. */
  readonly together: ReadonlyMap<number, Laid>;
  /** By reference mark: the plotted marks that are not it. */
  readonly apart: ReadonlyMap<number, readonly { readonly plotted: number; readonly reason: string }[]>;
  /** By plotted mark; a null cause is not held against the plot. */
  readonly causes: ReadonlyMap<
    number,
    { readonly cause: Cause | null; readonly reason: string; readonly overruleId: string }
  >;
  readonly grades: ReadonlyMap<GradedProperty, { readonly credit: number; readonly reason: string }>;
}

export const NO_RULINGS: Rulings = {
  together: new Map(),
  apart: new Map(),
  causes: new Map(),
  grades: new Map(),
};

const applies = (overruleId: string): OverruleFate => ({ overruleId, applies: true, why: null });
export const lapses = (overruleId: string, why: string): OverruleFate => ({
  overruleId,
  applies: false,
  why,
});

const NO_MARK = "the plot has no such mark";
const NO_REFERENCE = "the reference no longer has this mark";

/**
 * Sorts overrules in the order in which they were made: a later one takes the place of an earlier one about the same
 * thing, and one about something that is not there is listed as no longer applying. No overrules give no rulings.
 */
export function sortRulings(
  overrules: readonly Overrule[],
  prepared: PreparedReference,
  plotted: readonly PlottedModel[],
): { readonly rulings: Rulings; readonly fates: readonly OverruleFate[] } {
  const marks = new Map(plotted.map(({ mark }, index) => [mark.id, index]));
  const references = new Map(prepared.marks.map(({ mark }, index) => [mark.id, index]));
  const together = new Map<number, Laid>();
  const apart = new Map<number, { plotted: number; reason: string }[]>();
  const causes = new Map<number, { cause: Cause | null; reason: string; overruleId: string }>();
  const grades = new Map<GradedProperty, { credit: number; reason: string }>();
  const fates = overrules.map(({ id, ruling, reason }, at): OverruleFate => {
    const later = overrules.slice(at + 1);
    if (later.some((one) => isReplacedBy(ruling, one.ruling))) {
      return lapses(id, "a later overrule takes its place");
    }
    if (ruling.kind === "grade") {
      if (prepared.reference.grades[ruling.property] === undefined) {
        return lapses(id, `the reference no longer grades ${ruling.property}`);
      }
      grades.set(ruling.property, { credit: ruling.credit, reason });
      return applies(id);
    }
    const mark = marks.get(ruling.mark);
    if (mark === undefined) return lapses(id, NO_MARK);
    if (ruling.kind === "cause") {
      causes.set(mark, { cause: ruling.cause, reason, overruleId: id });
      return applies(id);
    }
    const reference = references.get(ruling.reference);
    if (reference === undefined) return lapses(id, NO_REFERENCE);
    if (ruling.kind === "together") together.set(reference, { plotted: mark, reason, place: ruling.place });
    else apart.set(reference, [...(apart.get(reference) ?? []), { plotted: mark, reason }]);
    return applies(id);
  });
  return { rulings: { together, apart, causes, grades }, fates };
}
