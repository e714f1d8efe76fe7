import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction, type Transaction } from "@/lib/data/store/database";
import { toColumn } from "@/lib/data/store/to-column";
import { announceSittings } from "@/lib/data/store/watch-bus";
import { writeTrail } from "@/lib/data/store/write-trail";
import { parseInput } from "@/lib/plot/parse-input";
import { EMPTY_SITTING } from "@/lib/plot/sitting-event";
import { SittingStateSchema } from "@/lib/plot/sitting-state";
import { toExercisePhase } from "@/lib/plot/to-exercise-phase";

const InputSchema = z.strictObject({ exerciseStoneId: z.string() });

async function findPlace(transaction: Transaction, exerciseStoneId: string, studentId: string) {
  const row = await transaction.exerciseStone.findUnique({
    where: { id: exerciseStoneId },
    include: {
      exercise: { include: { section: { include: { enrolments: { where: { studentId } } } } } },
      sittings: { where: { studentId }, orderBy: { attempt: "desc" }, take: 1 },
    },
  });
  if (row === null) return null;
  return { row, studentIds: row.exercise.section.enrolments.map((enrolment) => enrolment.studentId) };
}

/**
 * Opens the viewer's sitting on a stone of an exercise, or finds the one that they have. Throws AppError `not-found`,
 * or `closed` before the exercise opens and after it closed.
 */
export async function openSitting(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ sittingId: string }> {
  requireRole(viewer, "open-sitting");
  const { exerciseStoneId } = parseInput(InputSchema, input);
  const opened = await runInTransaction(async (transaction) => {
    const place = await findPlace(transaction, exerciseStoneId, viewer.userId);
    const { row } = requireAccess(viewer, "open-sitting", place);
    const [begun] = row.sittings;
    if (begun !== undefined) return { sittingId: begun.id };
    const now = new Date();
    const phase = toExercisePhase(row.exercise, now);
    if (phase === "ahead") throw new AppError("closed", "This exercise has not opened yet.");
    if (phase === "closed") throw new AppError("closed", "This exercise is closed.");
    const sitting = await transaction.sitting.create({
      data: {
        exerciseStoneId,
        studentId: viewer.userId,
        openedAt: now,
        state: toColumn(SittingStateSchema, { ...EMPTY_SITTING }),
      },
    });
    await writeTrail(transaction, viewer, {
      action: "open-sitting",
      subjectKind: "sitting",
      subjectId: sitting.id,
    });
    return { sittingId: sitting.id };
  });
  announceSittings(opened.sittingId);
  return opened;
}
