import type { OptionValues } from "@/lib/cli/command";
import { readInFile } from "@/lib/cli/read-in-file";
import { getOption } from "@/lib/cli/read-options";
import { readTextFile } from "@/lib/cli/read-text-file";
import { readExerciseSet } from "@/lib/exchange/read-exercise-set";
import { readPlots } from "@/lib/exchange/read-plots";
import type { ResolvedSet } from "@/lib/plot/parse-exercise-set";
import type { PlotsFile } from "@/lib/plot/plots-file";

/** The options that name a set and the plots that belong to it. */
export const SET_AND_PLOTS = [
  { name: "set", value: "FILE", required: true },
  { name: "plots", value: "FILE", required: true },
] as const;

/** Reads the set of `--set`. Throws AppError `bad-input` with the file and every fault. */
export async function readSet(values: OptionValues): Promise<ResolvedSet> {
  const file = getOption(values, "set");
  const text = await readTextFile(file);
  return readInFile(file, () => readExerciseSet(text));
}

/** Reads the files of `--set` and `--plots`. Throws AppError `bad-input` with the file and every fault. */
export async function readSetAndPlots(
  values: OptionValues,
): Promise<{ resolved: ResolvedSet; plots: PlotsFile }> {
  const resolved = await readSet(values);
  const file = getOption(values, "plots");
  const text = await readTextFile(file);
  return { resolved, plots: readInFile(file, () => readPlots(text, resolved)) };
}
