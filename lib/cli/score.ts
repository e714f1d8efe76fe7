import type { Command } from "@/lib/cli/command";
import { readSetAndPlots, SET_AND_PLOTS } from "@/lib/cli/read-set-and-plots";
import { scorePlots } from "@/lib/scoring/score-plot";

/** `score`: every plot scored and explained, in the order of the file. */
export const SCORE: Command = {
  name: "score",
  purpose: "scores plots against the references of a set",
  options: SET_AND_PLOTS,
  run: async (values) => {
    const { resolved, plots } = await readSetAndPlots(values);
    return { results: scorePlots(resolved, plots).map(({ result }) => result) };
  },
};
