import { parseJson } from "@/lib/exchange/parse-json";
import { parseExerciseSet, type ResolvedSet } from "@/lib/plot/parse-exercise-set";

/**
 * An exercise set from the text of its file (design.md, File formats). Throws AppError `bad-input` with the line and
 * column of what is no JSON, or with the path to each fault of the set.
 */
export function readExerciseSet(text: string): ResolvedSet {
  return parseExerciseSet(parseJson(text));
}
