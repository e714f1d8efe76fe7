import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction } from "@/lib/data/store/database";
import { findExercise } from "@/lib/data/store/find-exercise";
import { getRubric } from "@/lib/data/store/get-rubric";
import { writeTrail } from "@/lib/data/store/write-trail";
import { parseInput } from "@/lib/plot/parse-input";
import { RubricSchema } from "@/lib/plot/rubric";
import { writeRubric } from "@/lib/workflows/scoring/write-rubric";

const InputSchema = z.strictObject({
  exerciseId: z.string(),
  /** The version that the change was made from. */
  baseVersion: z.int().min(1),
  rubric: RubricSchema,
});

/**
 * Saves an exercise's rubric as a new version: what is handed in from now on is scored by it, and what was scored stays
 * until the exercise is rescored. Throws AppError `not-allowed`, `not-found`, `bad-input`, or `conflict` when somebody
 * else saved a version first.
 */
export async function saveRubric(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ version: number }> {
  requireRole(viewer, "set-exercise");
  const { exerciseId, baseVersion, rubric } = parseInput(InputSchema, input);
  return runInTransaction(async (transaction) => {
    const { row } = requireAccess(viewer, "set-exercise", await findExercise(transaction, exerciseId));
    if (getRubric(row.rubrics).row.version !== baseVersion) {
      throw new AppError("conflict", "Somebody else saved this rubric meanwhile; nothing was written.");
    }
    const version = await writeRubric(transaction, viewer, row, rubric);
    if (version === baseVersion) return { version };
    // The exercise's own form shows a number of the rubric: whoever has it open is told.
    await transaction.exercise.update({ where: { id: row.id }, data: { revision: row.revision + 1 } });
    await writeTrail(transaction, viewer, {
      action: "save-rubric",
      subjectKind: "exercise",
      subjectId: row.id,
      detail: `version ${version}`,
    });
    return { version };
  });
}
