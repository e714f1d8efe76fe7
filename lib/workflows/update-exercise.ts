import { isDeepStrictEqual } from "node:util";
import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction, type Transaction } from "@/lib/data/store/database";
import { type ExerciseWithParts, findExercise } from "@/lib/data/store/find-exercise";
import { getRubric } from "@/lib/data/store/get-rubric";
import { parseColumn } from "@/lib/data/store/parse-column";
import { resolveExerciseStones } from "@/lib/data/store/resolve-exercise-stones";
import { toColumn } from "@/lib/data/store/to-column";
import { writeTrail } from "@/lib/data/store/write-trail";
import { ExerciseFieldsSchema, findDateFaults } from "@/lib/plot/exercise-input";
import { ExerciseRulesSchema } from "@/lib/plot/exercise-rules";
import { ExerciseTermsSchema } from "@/lib/plot/exercise-terms";
import { parseInput } from "@/lib/plot/parse-input";
import { resolveRubric } from "@/lib/plot/rubric";
import { writeRubric } from "@/lib/workflows/scoring/write-rubric";

const InputSchema = z.strictObject({
  exerciseId: z.string(),
  /** The revision that the change was made from. */
  revision: z.int(),
  ...ExerciseFieldsSchema.shape,
});

/** Refuses to close a stone again that somebody has begun. */
async function requireNotBegun(
  transaction: Transaction,
  exercise: ExerciseWithParts,
  stoneOpenings: Readonly<Record<string, string>>,
): Promise<void> {
  const now = new Date();
  const ahead = exercise.stones.filter(
    ({ stoneId }) => Date.parse(stoneOpenings[stoneId] ?? "") > now.getTime(),
  );
  const begun = await transaction.sitting.findFirst({
    where: { exerciseStoneId: { in: ahead.map(({ id }) => id) } },
    select: { exerciseStone: { select: { stone: { select: { id: true, label: true } } } } },
  });
  if (begun === null) return;
  const { id, label } = begun.exerciseStone.stone;
  throw new AppError("conflict", `${label} has been begun already; it cannot open later.`, [
    { path: `stoneOpenings.${id}`, message: "somebody has begun this stone" },
  ]);
}

/** Lays the exercise's stones out anew: those that stay keep their sittings, one that was begun cannot go. */
async function replaceStones(
  transaction: Transaction,
  exercise: ExerciseWithParts,
  { stoneIds, stoneOpenings }: Pick<z.output<typeof InputSchema>, "stoneIds" | "stoneOpenings">,
): Promise<void> {
  await requireNotBegun(transaction, exercise, stoneOpenings);
  const kept = new Map(exercise.stones.map((one) => [one.stoneId, one.id]));
  const gone = exercise.stones
    .filter(({ stoneId, isRetake }) => !isRetake && !stoneIds.includes(stoneId))
    .map(({ id }) => id);
  if ((await transaction.retake.count({ where: { replacesId: { in: gone } } })) > 0) {
    throw new AppError("conflict", "A stone that a retake was granted for cannot be taken out.");
  }
  if ((await transaction.sitting.count({ where: { exerciseStoneId: { in: gone } } })) > 0) {
    throw new AppError("conflict", "A stone that somebody has begun cannot be taken out of the exercise.");
  }
  await transaction.exerciseStone.deleteMany({ where: { id: { in: gone } } });
  for (const [index, stoneId] of stoneIds.entries()) {
    const place = { position: index + 1, opensAt: stoneOpenings[stoneId] ?? null };
    const id = kept.get(stoneId);
    if (id !== undefined)
      await transaction.exerciseStone.update({ where: { id }, data: { ...place, isRetake: false } });
    else await transaction.exerciseStone.create({ data: { exerciseId: exercise.id, stoneId, ...place } });
  }
}

async function replaceAll(
  transaction: Transaction,
  viewer: Viewer,
  exercise: ExerciseWithParts,
  input: z.output<typeof InputSchema>,
): Promise<void> {
  const { exerciseId, revision, stoneIds, stoneOpenings, rubric, rules, ...fields } = input;
  const faults = findDateFaults(input);
  if (faults.length > 0) throw new AppError("bad-input", "The exercise was not changed.", faults);
  const { terms } = await resolveExerciseStones(transaction, stoneIds);
  if (!isDeepStrictEqual(terms, parseColumn(ExerciseTermsSchema, exercise.terms, "Exercise.terms"))) {
    throw new AppError("bad-input", "These stones have other scales or characteristics than the exercise.", [
      { path: "stoneIds", message: "other scales or characteristics" },
    ]);
  }
  await replaceStones(transaction, exercise, { stoneIds, stoneOpenings });
  await writeRubric(transaction, viewer, exercise, resolveRubric(rubric, getRubric(exercise.rubrics).rubric));
  await transaction.exercise.update({
    where: { id: exerciseId },
    data: { ...fields, rules: toColumn(ExerciseRulesSchema, rules), revision: revision + 1 },
  });
}

/**
 * Changes an exercise. Results stay as they are under a changed rubric until staff rescore the exercise. Throws AppError
 * `not-allowed`, `not-found`, `bad-input`, or `conflict` when somebody else changed it first or a stone that was
 * begun would go or open later.
 */
export async function updateExercise(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ revision: number }> {
  requireRole(viewer, "set-exercise");
  const parsed = parseInput(InputSchema, input);
  return runInTransaction(async (transaction) => {
    const found = await findExercise(transaction, parsed.exerciseId);
    const { row } = requireAccess(viewer, "set-exercise", found);
    if (row.revision !== parsed.revision) {
      throw new AppError("conflict", "Somebody else changed this exercise meanwhile; nothing was written.");
    }
    await replaceAll(transaction, viewer, row, parsed);
    await writeTrail(transaction, viewer, {
      action: "update-exercise",
      subjectKind: "exercise",
      subjectId: row.id,
      detail: `revision ${row.revision + 1}`,
    });
    return { revision: row.revision + 1 };
  });
}
