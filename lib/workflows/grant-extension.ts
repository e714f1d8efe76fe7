import { z } from "zod";
import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError, type Fault } from "@/lib/base/app-error";
import { runInTransaction } from "@/lib/data/store/database";
import { getAllowanceGround } from "@/lib/data/store/get-allowance-ground";
import { parseColumn } from "@/lib/data/store/parse-column";
import { writeTrail } from "@/lib/data/store/write-trail";
import { ExerciseRulesSchema, MOST_ATTEMPTS } from "@/lib/plot/exercise-rules";
import { parseInput } from "@/lib/plot/parse-input";
import { toOwnDates } from "@/lib/plot/to-own-dates";
import { moveRunningEnds } from "@/lib/workflows/timed/move-running-ends";

const instant = z.iso.datetime({ offset: true }).nullable();

const InputSchema = z.strictObject({
  exerciseId: z.string(),
  studentId: z.string(),
  /** In place of the exercise's own; null: as everybody's. */
  dueAt: instant,
  closesAt: instant,
  /** Of each stone, beyond the exercise's own. */
  extraAttempts: z.int().min(0).max(MOST_ATTEMPTS),
  /** For staff alone. */
  reason: z.string().trim().max(500).default(""),
});

/** An extension gives time: it is never earlier than what holds for everybody, and closes no sooner than it is due. */
function findFaults(
  exercise: { readonly dueAt: Date; readonly closesAt: Date | null },
  dueAt: Date | null,
  closesAt: Date | null,
): Fault[] {
  const faults: Fault[] = [];
  if (dueAt !== null && dueAt < exercise.dueAt) {
    faults.push({ path: "dueAt", message: "must not be earlier than for everybody" });
  }
  if (closesAt !== null && exercise.closesAt !== null && closesAt < exercise.closesAt) {
    faults.push({ path: "closesAt", message: "must not be earlier than for everybody" });
  }
  if (closesAt !== null && dueAt !== null && closesAt < dueAt) {
    faults.push({ path: "closesAt", message: "must not be earlier than it is due" });
  }
  return faults;
}

/**
 * Gives one student later dates for an exercise or more attempts at each stone; what was given before is replaced, and
 * nulls and 0 take it back. A timed stone that the closing cut short gets its full time. Throws AppError `not-allowed`,
 * `not-found`, or `bad-input`.
 */
export async function grantExtension(viewer: Viewer, input: z.input<typeof InputSchema>): Promise<void> {
  requireRole(viewer, "grant-allowance");
  const { exerciseId, studentId, extraAttempts, reason, ...wanted } = parseInput(InputSchema, input);
  const dueAt = wanted.dueAt === null ? null : new Date(wanted.dueAt);
  const closesAt = wanted.closesAt === null ? null : new Date(wanted.closesAt);
  await runInTransaction(async (transaction) => {
    const place = { exerciseId, studentId };
    const { exercise, studentName, allowance } = await getAllowanceGround(transaction, viewer, place);
    const faults = findFaults(exercise, dueAt, closesAt);
    if (faults.length > 0) throw new AppError("bad-input", "The extension was not given.", faults);
    const by = { grantedById: viewer.userId, grantedAt: new Date() };
    const given = { dueAt, closesAt, extraAttempts, reason, ...by };
    await transaction.allowance.upsert({
      where: { exerciseId_studentId: place },
      update: given,
      create: { ...place, ...given },
    });
    const { minutesPerStone } = parseColumn(ExerciseRulesSchema, exercise.rules, "Exercise.rules");
    await moveRunningEnds(transaction, {
      ...place,
      minutes: (minutesPerStone ?? 0) + (allowance?.extraMinutes ?? 0),
      addedMinutes: 0,
      closesAt: toOwnDates(exercise, { dueAt, closesAt }).closesAt,
    });
    const day = (at: Date | null) => (at === null ? "as everybody" : at.toISOString().slice(0, 16));
    await writeTrail(transaction, viewer, {
      action: "grant-extension",
      subjectKind: "exercise",
      subjectId: exerciseId,
      detail: `${studentName}: due ${day(dueAt)}, closes ${day(closesAt)}, ${extraAttempts} more attempts`,
    });
  });
}
