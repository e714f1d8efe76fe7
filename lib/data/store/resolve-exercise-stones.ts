import { isDeepStrictEqual } from "node:util";
import { AppError, type Fault } from "@/lib/base/app-error";
import type { Transaction } from "@/lib/data/store/database";
import { parseColumn } from "@/lib/data/store/parse-column";
import { type ExerciseTerms, type TrayTerms, TrayTermsSchema } from "@/lib/plot/exercise-terms";

/** What the stones of an exercise have in common. */
export interface ExerciseGround {
  readonly terms: ExerciseTerms;
  /** The rubric that the first stone's tray begins with, as overrides. */
  readonly rubric: TrayTerms["rubric"];
}

/**
 * Checks that the stones can stand in one exercise: all there, no label twice, all under the same scales and
 * characteristics. Throws AppError `bad-input` with the place of each fault in `stoneIds`.
 */
export async function resolveExerciseStones(
  transaction: Transaction,
  stoneIds: readonly string[],
): Promise<ExerciseGround> {
  const stones = await transaction.stone.findMany({
    where: { id: { in: [...stoneIds] } },
    include: { tray: { select: { terms: true } } },
  });
  const byId = new Map(stones.map((stone) => [stone.id, stone]));
  const faults: Fault[] = [];
  const labels = new Set<string>();
  let ground: ExerciseGround | null = null;
  stoneIds.forEach((id, index) => {
    const path = `stoneIds[${index}]`;
    const stone = byId.get(id);
    if (stone === undefined) {
      faults.push({ path, message: "there is no such stone" });
      return;
    }
    const { rubric, ...terms } = parseColumn(TrayTermsSchema, stone.tray.terms, "Tray.terms");
    ground ??= { terms, rubric };
    if (!isDeepStrictEqual(terms, ground.terms)) {
      faults.push({ path, message: "lies in a tray with other scales or characteristics than the first" });
    }
    if (labels.has(stone.label))
      faults.push({ path, message: `the label “${stone.label}” is there already` });
    labels.add(stone.label);
  });
  if (faults.length > 0 || ground === null) {
    throw new AppError("bad-input", "These stones cannot stand in one exercise.", faults);
  }
  return ground;
}
