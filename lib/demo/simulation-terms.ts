import type { SeededRandom } from "@/lib/base/seeded-random";
import type { FeatureImage } from "@/lib/demo/feature-image";
import type { StudentSkill } from "@/lib/demo/student-skill";
import type { Solid } from "@/lib/gem/solid";
import type { CharacteristicTable } from "@/lib/plot/characteristic";
import type { Stone } from "@/lib/plot/stone";

/** What every part of the error model draws from. */
export interface SimulationTerms {
  readonly random: SeededRandom;
  readonly stone: Stone;
  readonly solid: Solid;
  readonly characteristics: CharacteristicTable;
  readonly images: readonly FeatureImage[];
  readonly skill: StudentSkill;
}
