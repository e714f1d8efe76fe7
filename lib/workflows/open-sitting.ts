import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction, type Transaction } from "@/lib/data/store/database";
import { whereOwnPlaces } from "@/lib/data/store/find-own-label";
import { countOwnAttemptsLeft, ownAttemptParts } from "@/lib/data/store/own-attempts";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toColumn } from "@/lib/data/store/to-column";
import { announceSittings } from "@/lib/data/store/watch-bus";
import { writeTrail } from "@/lib/data/store/write-trail";
import { arrangeOwnPlaces } from "@/lib/plot/arrange-own-places";
import { type ExerciseRules, ExerciseRulesSchema, MOST_ATTEMPTS } from "@/lib/plot/exercise-rules";
import { findStoneOpening } from "@/lib/plot/find-stone-opening";
import { parseInput } from "@/lib/plot/parse-input";
import { EMPTY_SITTING } from "@/lib/plot/sitting-event";
import { SittingStateSchema } from "@/lib/plot/sitting-state";
import { toEndsAt } from "@/lib/plot/time-limit";
import { toExercisePhase } from "@/lib/plot/to-exercise-phase";
import { toMinuteWords } from "@/lib/plot/to-minute-words";
import { toOwnDates } from "@/lib/plot/to-own-dates";
import { followClock } from "@/lib/workflows/timed/follow-clock";

const InputSchema = z.strictObject({
  exerciseStoneId: z.string(),
  /** The minutes that the student was told and agreed to, where the stone is timed. */
  agreedMinutes: z.int().nullable().default(null),
  /** Which attempt is meant; null: the one that there is, or the first. */
  attempt: z
    .int()
    .min(1)
    .max(MOST_ATTEMPTS * 10)
    .nullable()
    .default(null),
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
      ...ownAttemptParts(studentId),
    },
  });
  if (row === null) return null;
  const isTheirs = !row.isRetake || row.retakes.length > 0;
  const enrolled = row.exercise.section.enrolments.map((enrolment) => enrolment.studentId);
  return { row, studentIds: isTheirs ? enrolled : [] };
}

type Place = NonNullable<Awaited<ReturnType<typeof findPlace>>>["row"];

/** Refuses before the exercise and the stone open for this student, and after it closed for them. */
function requireOpen(place: Place, now: Date): Date | null {
  const { exercise } = place;
  const dates = toOwnDates(exercise, exercise.allowances[0]);
  const phase = toExercisePhase(dates, now);
  if (phase === "ahead") {
    throw new AppError("closed", `This exercise opens on ${toMinuteWords(dates.opensAt)}.`);
  }
  if (phase === "closed") throw new AppError("closed", "This exercise is closed.");
  const opening = findStoneOpening(place, now);
  if (opening !== null) throw new AppError("closed", `This stone opens on ${toMinuteWords(opening)}.`);
  return dates.closesAt;
}

/** When the time runs out for a stone opened now, null without a limit. Refuses one that its student was not told of. */
function toAgreedEnd(
  { exercise }: Place,
  { minutesPerStone }: ExerciseRules,
  times: { readonly now: Date; readonly closesAt: Date | null },
  agreedMinutes: number | null,
): Date | null {
  if (minutesPerStone === null) return null;
  const minutes = minutesPerStone + (exercise.allowances[0]?.extraMinutes ?? 0);
  if (minutes !== agreedMinutes) {
    throw new AppError(
      "conflict",
      `This stone is timed: ${minutes} minutes from the moment you open it. It was not opened; open it again to begin.`,
    );
  }
  return toEndsAt(times.now, minutes, times.closesAt);
}

/** Refuses a stone whose turn has not come, where an exercise is sat in order. */
async function requireTurn(transaction: Transaction, row: Place, rules: ExerciseRules, studentId: string) {
  if (!rules.isInOrder || row.isRetake) return;
  const places = await transaction.exerciseStone.findMany({
    where: { exerciseId: row.exerciseId, ...whereOwnPlaces(studentId) },
    include: {
      stone: { select: { label: true } },
      sittings: { where: { studentId, handIn: { isNot: null } }, select: { id: true } },
    },
  });
  const arranged = arrangeOwnPlaces(places, rules.areLabelsHidden, studentId);
  const before = arranged[arranged.findIndex(({ place }) => place.id === row.id) - 1];
  if (before !== undefined && before.place.sittings.length === 0) {
    throw new AppError("closed", `This stone opens once ${before.label} is handed in.`);
  }
}

/** The number of the attempt that begins now. Refuses one that the student may not begin. */
function requireAttempt(row: Place, wanted: number | null): number {
  const next = (row.sittings.at(-1)?.attempt ?? 0) + 1;
  const isMeant = wanted === null || wanted === next;
  if (isMeant && countOwnAttemptsLeft(row, row.exercise) > 0) return next;
  throw new AppError("closed", "This stone takes no further attempt.");
}

/**
 * Opens the viewer's sitting on a stone of an exercise, or finds the one that they have; a further attempt where they
 * ask for it by its number and may. Throws AppError `not-found`, `closed` before the exercise or the stone opens for them,
 * after it closed, before the stone's turn or without an attempt left, or `conflict` where the stone is timed and the student
 * did not agree to just that time.
 */
export async function openSitting(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ sittingId: string }> {
  requireRole(viewer, "open-sitting");
  const { exerciseStoneId, agreedMinutes, attempt: wanted } = parseInput(InputSchema, input);
  await followClock();
  const opened = await runInTransaction(async (transaction) => {
    const place = await findPlace(transaction, exerciseStoneId, viewer.userId);
    const { row } = requireAccess(viewer, "open-sitting", place);
    const begun = row.sittings.findLast(({ attempt }) => wanted === null || attempt === wanted);
    if (begun !== undefined) return { sittingId: begun.id };
    const now = new Date();
    const closesAt = requireOpen(row, now);
    const rules = parseColumn(ExerciseRulesSchema, row.exercise.rules, "Exercise.rules");
    await requireTurn(transaction, row, rules, viewer.userId);
    const attempt = requireAttempt(row, wanted);
    const endsAt = toAgreedEnd(row, rules, { now, closesAt }, agreedMinutes);
    const sitting = await transaction.sitting.create({
      data: {
        exerciseStoneId,
        studentId: viewer.userId,
        attempt,
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
