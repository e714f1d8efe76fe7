/** From JSON to plots that fit a set, or a refusal with the path to each fault. */
import { AppError, type Fault } from "@/lib/base/app-error";
import { findPlotFaults } from "@/lib/plot/find-plot-faults";
import type { ResolvedSet } from "@/lib/plot/parse-exercise-set";
import { type PlotsFile, PlotsFileSchema } from "@/lib/plot/plots-file";
import { toFaults } from "@/lib/plot/to-faults";

/**
 * Parses a plots file and holds every plot against the set's stones, scales and characteristics. Throws AppError
 * `bad-input` with every fault that could be found; a file without plots is accepted.
 */
export function parsePlots(json: unknown, resolved: ResolvedSet): PlotsFile {
  const parsed = PlotsFileSchema.safeParse(json);
  if (!parsed.success) throw refuse(toFaults(parsed.error));
  const indexById = new Map(resolved.set.stones.map((stone, index) => [stone.id, index]));
  const faults = parsed.data.plots.flatMap((plot, index): Fault[] => {
    const path = `plots[${index}]`;
    const stoneIndex = indexById.get(plot.stone);
    if (stoneIndex === undefined) {
      return [{ path: `${path}.stone`, message: `the set has no stone "${plot.stone}"` }];
    }
    return findPlotFaults(plot, resolved.solids[stoneIndex] ?? null, resolved, path);
  });
  if (faults.length > 0) throw refuse(faults);
  return parsed.data;
}

function refuse(faults: readonly Fault[]): AppError {
  return new AppError("bad-input", "The plots were refused; nothing was written.", faults);
}
