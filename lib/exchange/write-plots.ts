import { formatJson } from "@/lib/exchange/format-json";
import { type PlotsFile, PlotsFileSchema } from "@/lib/plot/plots-file";

/**
 * The text of a plots file, canonical as `writeExerciseSet` is. Throws ZodError for a value that is no plots file
 * (a fault of the program).
 */
export function writePlots(file: PlotsFile): string {
  return formatJson(PlotsFileSchema.parse(file));
}
