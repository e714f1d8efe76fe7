/** What is still open on a sitting, said before it is handed in. Pure. */
import { PROPERTY_LABELS } from "@/components/forms/property-labels";
import { createDocument, listMarks } from "@/lib/editor/plot-document";
import { type Characteristic, toCharacteristicLabel } from "@/lib/plot/characteristic";
import type { ExerciseRules } from "@/lib/plot/exercise-rules";
import { GRADED_PROPERTIES } from "@/lib/plot/grades";
import { listUnproved } from "@/lib/plot/list-unproved";
import { PREPARATION_STEPS, type SittingState } from "@/lib/plot/sitting-event";

/** A mark that the exercise asks a proof of and that has none. */
export interface UnprovedMark {
  readonly id: string;
  /** The callout's own. */
  readonly number: number;
  /** "3, pinpoint, crown" */
  readonly words: string;
}

export interface OpenPoints {
  /** One sentence for each thing that is open. */
  readonly sentences: readonly string[];
  readonly unproved: readonly UnprovedMark[];
}

function toNumbers(numbers: readonly number[]): string {
  const shown = numbers.slice(0, 12).join(", ");
  return numbers.length > 12 ? `${shown} and ${numbers.length - 12} more` : shown;
}

function toMarkPoint(numbers: readonly number[], all: number, what: string): string[] {
  if (numbers.length === 0) return [];
  if (numbers.length === all && all > 1) return [`None of the ${all} marks has ${what}`];
  return [
    `${numbers.length === 1 ? "1 mark" : `${numbers.length} marks`} without ${what}: ${toNumbers(numbers)}`,
  ];
}

/** What is open; nothing when all was given. Proofs only where the exercise asks for them. */
export function listOpenPoints(
  { plot, prepared }: SittingState,
  rules: ExerciseRules,
  characteristics: readonly Characteristic[],
): OpenPoints {
  const marks = listMarks(createDocument(plot.marks));
  const byName = new Map(characteristics.map((one) => [one.name, one]));
  const withoutProof = new Set(listUnproved(marks, rules, byName));
  const unrated = marks.flatMap(({ confidence }, index) => (confidence === undefined ? [index + 1] : []));
  const notGiven = GRADED_PROPERTIES.filter((property) => plot.grades[property] === undefined);
  const unprepared = PREPARATION_STEPS.filter((step) => prepared[step] === undefined).length;
  const labelOf = (name: string) => byName.get(name)?.label ?? toCharacteristicLabel(name);
  const sentences = [
    ...(marks.length === 0
      ? ["No mark is plotted: the stone goes in as one in which you found nothing"]
      : []),
    ...(notGiven.length > 0
      ? [`Not graded: ${notGiven.map((property) => PROPERTY_LABELS[property].toLowerCase()).join(", ")}`]
      : []),
    ...toMarkPoint(unrated, marks.length, "a confidence"),
    ...(rules.preparation !== "off" && unprepared > 0
      ? [`${unprepared} of ${PREPARATION_STEPS.length} steps of the preparation not confirmed`]
      : []),
  ];
  const unproved = marks.flatMap(({ id, view, characteristic }, index) =>
    withoutProof.has(id)
      ? [{ id, number: index + 1, words: `${index + 1}, ${labelOf(characteristic)}, ${view}` }]
      : [],
  );
  return { sentences, unproved };
}
