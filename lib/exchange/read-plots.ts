import { parseJson } from "@/lib/exchange/parse-json";
import type { ResolvedSet } from "@/lib/plot/parse-exercise-set";
import { parsePlots } from "@/lib/plot/parse-plots";
import type { PlotsFile } from "@/lib/plot/plots-file";

/**
 * Plots from the text of their file, held against the set that they belong to. Throws AppError `bad-input` with the
 * line and column of what is no JSON, or with the path to each fault of the plots.
 */
export function readPlots(text: string, resolved: ResolvedSet): PlotsFile {
  return parsePlots(parseJson(text), resolved);
}
