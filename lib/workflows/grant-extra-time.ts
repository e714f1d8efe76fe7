import { z } from "zod";
import { refuseAsNotFound, requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { runInTransaction, type Transaction } from "@/lib/data/store/database";
import { findExercise } from "@/lib/data/store/find-exercise";
import { writeTrail } from "@/lib/data/store/write-trail";
import { LONGEST_MINUTES } from "@/lib/plot/exercise-rules";
import { parseInput } from "@/lib/plot/parse-input";
import { toEndsAt } from "@/lib/plot/time-limit";

const InputSchema = z.strictObject({
  exerciseId: z.string(),
  studentId: z.string(),
  /** For each stone of the exercise, beyond its own limit; 0 takes it back. */
  extraMinutes: z.int().min(0).max(LONGEST_MINUTES),
  /** For staff alone. */
  reason: z.string().trim().max(500).default(""),
});

/** Gives the stones that are being timed the minutes that came on top. Time that was told is never taken back. */
async function moveRunningEnds(
  transaction: Transaction,
  { exerciseId, studentId }: { exerciseId: string; studentId: string },
  addedMinutes: number,
  closesAt: Date | null,
): Promise<void> {
  if (addedMinutes <= 0) return;
  const running = await transaction.sitting.findMany({
    where: { studentId, exerciseStone: { exerciseId }, endsAt: { not: null }, handIn: null },
    select: { id: true, endsAt: true, limitMs: true },
  });
  for (const { id, endsAt, limitMs } of running) {
    if (endsAt === null) continue;
    const moved = toEndsAt(endsAt, addedMinutes, closesAt);
    const addedMs = moved.getTime() - endsAt.getTime();
    if (addedMs <= 0) continue;
    await transaction.sitting.update({
      where: { id },
      data: { endsAt: moved, limitMs: (limitMs ?? 0) + addedMs },
    });
  }
}

/**
 * Gives one student more time for each stone of an exercise; a stone on the bench gets it at once, one whose time has
 * run out and that is not handed in yet too. What was given before is replaced. Throws AppError `not-allowed`,
 * `not-found`, also for somebody who is not in the exercise's section, or `bad-input`.
 */
export async function grantExtraTime(viewer: Viewer, input: z.input<typeof InputSchema>): Promise<void> {
  requireRole(viewer, "grant-allowance");
  const { exerciseId, studentId, extraMinutes, reason } = parseInput(InputSchema, input);
  await runInTransaction(async (transaction) => {
    const { row } = requireAccess(viewer, "grant-allowance", await findExercise(transaction, exerciseId));
    const enrolment = await transaction.enrolment.findUnique({
      where: { sectionId_studentId: { sectionId: row.sectionId, studentId } },
      include: { student: { select: { name: true } } },
    });
    if (enrolment === null) throw refuseAsNotFound();
    const where = { exerciseId_studentId: { exerciseId, studentId } };
    const before = await transaction.allowance.findUnique({ where });
    const given = { extraMinutes, reason, grantedById: viewer.userId, grantedAt: new Date() };
    await transaction.allowance.upsert({ where, update: given, create: { exerciseId, studentId, ...given } });
    const addedMinutes = extraMinutes - (before?.extraMinutes ?? 0);
    await moveRunningEnds(transaction, { exerciseId, studentId }, addedMinutes, row.closesAt);
    await writeTrail(transaction, viewer, {
      action: "grant-extra-time",
      subjectKind: "exercise",
      subjectId: exerciseId,
      detail: `${enrolment.student.name}: ${extraMinutes} minutes`,
    });
  });
}
