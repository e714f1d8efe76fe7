import { z } from "zod";
import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { runInTransaction } from "@/lib/data/store/database";
import { getAllowanceGround } from "@/lib/data/store/get-allowance-ground";
import { parseColumn } from "@/lib/data/store/parse-column";
import { writeTrail } from "@/lib/data/store/write-trail";
import { ExerciseRulesSchema, LONGEST_MINUTES } from "@/lib/plot/exercise-rules";
import { parseInput } from "@/lib/plot/parse-input";
import { toOwnDates } from "@/lib/plot/to-own-dates";
import { moveRunningEnds } from "@/lib/workflows/timed/move-running-ends";

const InputSchema = z.strictObject({
  exerciseId: z.string(),
  studentId: z.string(),
  /** For each stone of the exercise, beyond its own limit; 0 takes it back. */
  extraMinutes: z.int().min(0).max(LONGEST_MINUTES),
  /** For staff alone. */
  reason: z.string().trim().max(500).default(""),
});

/**
 * Gives one student more time for each stone of an exercise; a stone on the bench gets it at once, one whose time has
 * run out and that is not handed in yet too. What was given before is replaced. Throws AppError `not-allowed`,
 * `not-found`, also for somebody who is not in the exercise's section, or `bad-input`.
 */
export async function grantExtraTime(viewer: Viewer, input: z.input<typeof InputSchema>): Promise<void> {
  requireRole(viewer, "grant-allowance");
  const { exerciseId, studentId, extraMinutes, reason } = parseInput(InputSchema, input);
  await runInTransaction(async (transaction) => {
    const place = { exerciseId, studentId };
    const { exercise, studentName, allowance } = await getAllowanceGround(transaction, viewer, place);
    const given = { extraMinutes, reason, grantedById: viewer.userId, grantedAt: new Date() };
    await transaction.allowance.upsert({
      where: { exerciseId_studentId: place },
      update: given,
      create: { ...place, ...given },
    });
    const { minutesPerStone } = parseColumn(ExerciseRulesSchema, exercise.rules, "Exercise.rules");
    await moveRunningEnds(transaction, {
      ...place,
      minutes: (minutesPerStone ?? 0) + extraMinutes,
      addedMinutes: extraMinutes - (allowance?.extraMinutes ?? 0),
      closesAt: toOwnDates(exercise, allowance ?? undefined).closesAt,
    });
    await writeTrail(transaction, viewer, {
      action: "grant-extra-time",
      subjectKind: "exercise",
      subjectId: exerciseId,
      detail: `${studentName}: ${extraMinutes} minutes`,
    });
  });
}
