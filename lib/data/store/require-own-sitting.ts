import { requireAccess } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import type { Transaction } from "@/lib/data/store/database";
import { findSitting, type SittingRow, toSittingDates } from "@/lib/data/store/find-sitting";
import { isGraceOver, isMadeInTime, isTimeOver, type TimedSitting } from "@/lib/plot/time-limit";
import { type ExerciseDates, toExercisePhase } from "@/lib/plot/to-exercise-phase";

/** The viewer's own sitting, handed in or not. Throws AppError `not-found`. */
export async function requireOwnSitting(
  transaction: Transaction,
  viewer: Viewer,
  sittingId: string,
): Promise<SittingRow> {
  return requireAccess(viewer, "write-bench", await findSitting(transaction, sittingId)).row;
}

/** What decides whether a sitting takes more work. */
export interface Openness extends TimedSitting {
  readonly isHandedIn: boolean;
  /** The exercise's dates as they hold for the student. */
  readonly dates: ExerciseDates;
}

export function toOpenness(row: SittingRow): Openness {
  const { openedAt, endsAt, limitMs, handIn } = row;
  return { openedAt, endsAt, limitMs, isHandedIn: handIn !== null, dates: toSittingDates(row) };
}

/**
 * Refuses a sitting that takes no more work. Once its time has run out, it still takes for a short while what was made
 * before the end: `lastMadeMs` is when the latest of it was, since the opening. Throws AppError `closed`.
 */
export function requireStillOpen(openness: Openness, lastMadeMs = 0): void {
  if (openness.isHandedIn) throw new AppError("closed", "This stone is handed in; it takes no more changes.");
  const nowMs = Date.now();
  if (isTimeOver(openness, nowMs)) {
    if (!isGraceOver(openness, nowMs) && isMadeInTime(openness, lastMadeMs)) return;
    throw new AppError("closed", "The time for this stone has run out; what was saved by then is handed in.");
  }
  if (toExercisePhase(openness.dates, new Date()) === "closed") {
    throw new AppError("closed", "This exercise is closed; it takes no more changes.");
  }
}

/** Refuses a writer that another has taken over from. Throws AppError `taken-over`. */
export function requireWriter(row: Pick<SittingRow, "writerId">, writerId: string): void {
  if (row.writerId !== writerId) {
    throw new AppError(
      "taken-over",
      "This stone is being plotted in another tab or on another device. Take over here to go on.",
    );
  }
}
