import firstLook from "@/exercise-sets/first-look.json";
import gradeBoundaries from "@/exercise-sets/grade-boundaries.json";
import reflectionsAndGlints from "@/exercise-sets/reflections-and-glints.json";
import type { DemoExercise } from "@/lib/demo/demo-exercises";
import { listFeatureImages } from "@/lib/demo/list-feature-images";
import type { SimulatedStone } from "@/lib/demo/simulate-sitting";
import { parseExerciseSet, type ResolvedSet } from "@/lib/plot/parse-exercise-set";
import type { Stone } from "@/lib/plot/stone";

const SETS: Readonly<Record<DemoExercise["set"], unknown>> = {
  "first-look": firstLook,
  "reflections-and-glints": reflectionsAndGlints,
  "grade-boundaries": gradeBoundaries,
};

/** Stones as the error model takes them, in the order of the set and of its cuts, whatever is marked on them. */
export function simulateStones(
  { solids, characteristics, scales }: ResolvedSet,
  stones: readonly Stone[],
  isPlotted = true,
): SimulatedStone[] {
  return stones.flatMap((stone, index): SimulatedStone[] => {
    const solid = solids[index];
    if (solid === undefined) return [];
    const images = isPlotted ? listFeatureImages(stone, solid, characteristics) : [];
    return [{ stone, solid, characteristics, scales, images }];
  });
}

/** One of the demo's sets, as the error model takes its stones; the images are worked out only where somebody sat. */
export function readDemoSet(
  name: DemoExercise["set"],
  isPlotted: boolean,
): { resolved: ResolvedSet; stones: SimulatedStone[] } {
  const resolved = parseExerciseSet(SETS[name]);
  return { resolved, stones: simulateStones(resolved, resolved.set.stones, isPlotted) };
}
