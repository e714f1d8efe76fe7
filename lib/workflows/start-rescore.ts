import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction } from "@/lib/data/store/database";
import { findExercise } from "@/lib/data/store/find-exercise";
import { discardRescoreRow, isOvertaken } from "@/lib/data/store/find-rescore";
import { isOlder, listScored, toGroundNow } from "@/lib/data/store/list-scored";
import { toColumn } from "@/lib/data/store/to-column";
import { parseInput } from "@/lib/plot/parse-input";
import { RescoreGroundSchema } from "@/lib/plot/rescore";

const InputSchema = z.strictObject({ exerciseId: z.string() });

/**
 * Begins to work out what the rubric in force and the newest references would change of an exercise's results; nothing
 * is changed by it. Whoever calls runs the job (`runRescore`). Where one is under way or ready already by the same
 * versions, that one is given; one that was overtaken is discarded. Throws AppError `not-allowed`, `not-found`, or
 * `conflict` where every result is up to date.
 */
export async function startRescore(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ rescoreId: string }> {
  requireRole(viewer, "rescore-exercise");
  const { exerciseId } = parseInput(InputSchema, input);
  return runInTransaction(async (transaction) => {
    const { row } = requireAccess(viewer, "rescore-exercise", await findExercise(transaction, exerciseId));
    const ground = toGroundNow(row);
    const open = await transaction.rescore.findFirst({
      where: { exerciseId, state: { in: ["working", "ready"] } },
    });
    if (open !== null && !isOvertaken(open, ground)) return { rescoreId: open.id };
    const older = (await listScored(transaction, exerciseId, ground)).filter(isOlder);
    if (open !== null) await discardRescoreRow(transaction, open.id, null);
    if (older.length === 0) {
      throw new AppError("conflict", "Every result is scored by the newest rubric and references already.");
    }
    const made = await transaction.rescore.create({
      data: {
        exerciseId,
        rubricVersionId: ground.rubricVersionId,
        ground: toColumn(RescoreGroundSchema, ground.stones),
        total: older.length,
        startedById: viewer.userId,
        startedAt: new Date(),
      },
    });
    return { rescoreId: made.id };
  });
}
