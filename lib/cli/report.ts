import type { Command } from "@/lib/cli/command";
import { readSetAndPlots, SET_AND_PLOTS } from "@/lib/cli/read-set-and-plots";
import { type ScoredRow, summariseClass } from "@/lib/cli/summarise-class";
import { scorePlots } from "@/lib/scoring/score-plot";

/** `report`: the class at a glance. */
export const REPORT: Command = {
  name: "report",
  purpose: "the class at a glance: students, characteristics, stones, free response",
  options: SET_AND_PLOTS,
  run: async (values) => {
    const { resolved, plots } = await readSetAndPlots(values);
    const stones = new Map(resolved.set.stones.map((stone) => [stone.id, stone]));
    const rows = scorePlots(resolved, plots).flatMap(({ result }, index): ScoredRow[] => {
      const plot = plots.plots[index];
      const stone = stones.get(result.stone);
      return plot === undefined || stone === undefined ? [] : [{ plot, result, stone }];
    });
    return summariseClass(resolved, rows);
  },
};
