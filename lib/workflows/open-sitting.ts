import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction, type Transaction } from "@/lib/data/store/database";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toColumn } from "@/lib/data/store/to-column";
import { announceSittings } from "@/lib/data/store/watch-bus";
import { writeTrail } from "@/lib/data/store/write-trail";
import { ExerciseRulesSchema } from "@/lib/plot/exercise-rules";
import { parseInput } from "@/lib/plot/parse-input";
import { EMPTY_SITTING } from "@/lib/plot/sitting-event";
import { SittingStateSchema } from "@/lib/plot/sitting-state";
import { toEndsAt } from "@/lib/plot/time-limit";
import { toExercisePhase } from "@/lib/plot/to-exercise-phase";
import { followClock } from "@/lib/workflows/timed/follow-clock";

const InputSchema = z.strictObject({
  exerciseStoneId: z.string(),
  /** The minutes that the student was told and agreed to, where the stone is timed. */
  agreedMinutes: z.int().nullable().default(null),
});

async function findPlace(transaction: Transaction, exerciseStoneId: string, studentId: string) {
  const row = await transaction.exerciseStone.findUnique({
    where: { id: exerciseStoneId },
    include: {
      exercise: {
        include: {
          section: { include: { enrolments: { where: { studentId } } } },
          allowances: { where: { studentId } },
        },
      },
      sittings: { where: { studentId }, orderBy: { attempt: "desc" }, take: 1 },
    },
  });
  if (row === null) return null;
  return { row, studentIds: row.exercise.section.enrolments.map((enrolment) => enrolment.studentId) };
}

type Place = NonNullable<Awaited<ReturnType<typeof findPlace>>>["row"];

/** When the time runs out for a stone opened now, null without a limit. Refuses one that its student was not told of. */
function toAgreedEnd({ exercise }: Place, now: Date, agreedMinutes: number | null): Date | null {
  const { minutesPerStone } = parseColumn(ExerciseRulesSchema, exercise.rules, "Exercise.rules");
  if (minutesPerStone === null) return null;
  const minutes = minutesPerStone + (exercise.allowances[0]?.extraMinutes ?? 0);
  if (minutes !== agreedMinutes) {
    throw new AppError(
      "conflict",
      `This stone is timed: ${minutes} minutes from the moment you open it. It was not opened; open it again to begin.`,
    );
  }
  return toEndsAt(now, minutes, exercise.closesAt);
}

/**
 * Opens the viewer's sitting on a stone of an exercise, or finds the one that they have. Throws AppError `not-found`,
 * `closed` before the exercise opens and after it closed, or
 * `conflict` where the stone is timed and the student did not agree to just that time.
 */
export async function openSitting(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ sittingId: string }> {
  requireRole(viewer, "open-sitting");
  const { exerciseStoneId, agreedMinutes } = parseInput(InputSchema, input);
  await followClock();
  const opened = await runInTransaction(async (transaction) => {
    const place = await findPlace(transaction, exerciseStoneId, viewer.userId);
    const { row } = requireAccess(viewer, "open-sitting", place);
    const [begun] = row.sittings;
    if (begun !== undefined) return { sittingId: begun.id };
    const now = new Date();
    const phase = toExercisePhase(row.exercise, now);
    if (phase === "ahead") throw new AppError("closed", "This exercise has not opened yet.");
    if (phase === "closed") throw new AppError("closed", "This exercise is closed.");
    const endsAt = toAgreedEnd(row, now, agreedMinutes);
    const sitting = await transaction.sitting.create({
      data: {
        exerciseStoneId,
        studentId: viewer.userId,
        openedAt: now,
        endsAt,
        limitMs: endsAt === null ? null : endsAt.getTime() - now.getTime(),
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
