import type { SeededRandom } from "@/lib/base/seeded-random";
import type { StudentSkill } from "@/lib/demo/student-skill";
import type { CharacteristicTable } from "@/lib/plot/characteristic";

/** Of the wrong names given, the share that is at least like the right one. */
const LIKELY_SHARE = 0.85;

/**
 * What a student calls a feature: its own name as often as `naming` says, else mostly one that the likeness table
 * counts as like it, else any of the table.
 */
export function nameFeature(
  random: SeededRandom,
  characteristic: string,
  table: CharacteristicTable,
  skill: StudentSkill,
): string {
  if (random.chance(skill.naming)) return characteristic;
  const like = table.get(characteristic)?.like ?? [];
  if (like.length > 0 && random.chance(LIKELY_SHARE)) return random.pick(like);
  return random.pick([...table.keys()]);
}
