import { formatJson } from "@/lib/exchange/format-json";
import { type ExerciseSet, ExerciseSetSchema } from "@/lib/plot/exercise-set";

/**
 * The text of an exercise set's file, canonical: keys in the order of design.md, whatever order the value had them
 * in, so that reading what was written and writing it again gives the same bytes. Throws ZodError for a value that
 * is no exercise set (a fault of the program).
 */
export function writeExerciseSet(set: ExerciseSet): string {
  return formatJson(ExerciseSetSchema.parse(set));
}
