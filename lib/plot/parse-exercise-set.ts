/** From JSON to an exercise set that can be scored by, or a refusal with the path to each fault. */
import { AppError, type Fault } from "@/lib/base/app-error";
import type { Solid } from "@/lib/gem/build-solid";
import { buildCharacteristicTable, type CharacteristicTable } from "@/lib/plot/characteristic";
import { type ExerciseSet, ExerciseSetSchema } from "@/lib/plot/exercise-set";
import { findReferenceFaults, findRepeatedIds, findSolid } from "@/lib/plot/find-plot-faults";
import { resolveScales, type Scales } from "@/lib/plot/grades";
import { findRubricFaults, type Rubric, resolveRubric } from "@/lib/plot/rubric";
import { toReference } from "@/lib/plot/stone";
import { toFaults } from "@/lib/plot/to-faults";

/** An exercise set with what it leaves to defaults filled in. `solids` is in the order of the stones. */
export interface ResolvedSet {
  readonly set: ExerciseSet;
  readonly rubric: Rubric;
  readonly scales: Scales;
  readonly characteristics: CharacteristicTable;
  readonly solids: readonly Solid[];
}

/**
 * Parses and checks a whole set. Throws AppError `bad-input` with every fault that could be found: unknown keys,
 * numbers out of range, repeated ids, self-crossing outlines, marks outside the girdle, unknown characteristics,
 * grades off their scale, proportions that make no stone.
 */
export function parseExerciseSet(json: unknown): ResolvedSet {
  const parsed = ExerciseSetSchema.safeParse(json);
  if (!parsed.success) throw refuse(toFaults(parsed.error));
  const set = parsed.data;
  const rubric = resolveRubric(set.rubric);
  const scales = resolveScales(set.scales);
  const characteristics = buildCharacteristicTable(set.characteristics);
  const faults: Fault[] = [
    ...findRubricFaults(rubric).map(({ path, message }) => ({ path: `rubric.${path}`, message })),
    ...findCharacteristicFaults(set),
    ...findRepeatedIds(set.stones, "stones"),
  ];
  const solids: Solid[] = [];
  set.stones.forEach((stone, index) => {
    const path = `stones[${index}]`;
    const { solid, faults: solidFaults } = findSolid(stone, path);
    if (solid !== null) solids.push(solid);
    faults.push(
      ...solidFaults,
      ...findReferenceFaults(toReference(stone), solid, { characteristics, scales }, path),
    );
  });
  if (faults.length > 0) throw refuse(faults);
  return { set, rubric, scales, characteristics, solids };
}

function findCharacteristicFaults(set: ExerciseSet): Fault[] {
  const known = buildCharacteristicTable();
  const added = set.characteristics ?? [];
  const names = new Set(known.keys());
  for (const { name } of added) names.add(name);
  const seen = new Set<string>();
  return added.flatMap(({ name, like }, index) => {
    const path = `characteristics[${index}]`;
    const faults: Fault[] = [];
    if (known.has(name) || seen.has(name)) {
      faults.push({ path: `${path}.name`, message: `"${name}" is there already` });
    }
    seen.add(name);
    like.forEach((other, at) => {
      if (!names.has(other)) {
        faults.push({ path: `${path}.like[${at}]`, message: `"${other}" is not a known characteristic` });
      }
    });
    return faults;
  });
}

function refuse(faults: readonly Fault[]): AppError {
  return new AppError("bad-input", "The exercise set was refused; nothing was written.", faults);
}
