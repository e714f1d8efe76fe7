/** What is still open on a sitting, said before it is handed in. Pure. */
import { PROPERTY_LABELS } from "@/components/forms/property-labels";
import { createDocument, listMarks } from "@/lib/editor/plot-document";
import type { ExerciseRules } from "@/lib/plot/exercise-rules";
import { GRADED_PROPERTIES } from "@/lib/plot/grades";
import { PREPARATION_STEPS, type SittingState } from "@/lib/plot/sitting-event";

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

/** One sentence for each thing that is open; an empty list when nothing is. Numbers are the callouts' own. */
export function listOpenPoints({ plot, prepared }: SittingState, rules: ExerciseRules): string[] {
  const marks = listMarks(createDocument(plot.marks));
  const numbersOf = (isOpen: (mark: (typeof marks)[number]) => boolean) =>
    marks.flatMap((mark, index) => (isOpen(mark) ? [index + 1] : []));
  const notGiven = GRADED_PROPERTIES.filter((property) => plot.grades[property] === undefined);
  const unprepared = PREPARATION_STEPS.filter((step) => prepared[step] === undefined).length;
  return [
    ...(marks.length === 0
      ? ["No mark is plotted: the stone goes in as one in which you found nothing"]
      : []),
    ...(notGiven.length > 0
      ? [`Not graded: ${notGiven.map((property) => PROPERTY_LABELS[property].toLowerCase()).join(", ")}`]
      : []),
    ...toMarkPoint(
      numbersOf(({ confidence }) => confidence === undefined),
      marks.length,
      "a confidence",
    ),
    ...toMarkPoint(
      numbersOf(({ proofs }) => (proofs ?? []).length === 0),
      marks.length,
      "a proof",
    ),
    ...(rules.preparation !== "off" && unprepared > 0
      ? [`${unprepared} of ${PREPARATION_STEPS.length} steps of the preparation not confirmed`]
      : []),
  ];
}
