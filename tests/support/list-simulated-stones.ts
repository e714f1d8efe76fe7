import { listFeatureImages } from "@/lib/demo/list-feature-images";
import type { SimulatedStone } from "@/lib/demo/simulate-sitting";
import type { Solid } from "@/lib/gem/solid";
import { listExerciseSets } from "@/tests/support/list-exercise-sets";

/** Every stone of exercise-sets/ as the demo's error model takes it. */
export function listSimulatedStones(): SimulatedStone[] {
  return listExerciseSets().flatMap(({ resolved }) =>
    resolved.set.stones.map((stone, index) => {
      const solid = resolved.solids[index] as Solid;
      const { characteristics, scales } = resolved;
      return {
        stone,
        solid,
        characteristics,
        scales,
        images: listFeatureImages(stone, solid, characteristics),
      };
    }),
  );
}
