/** The dates and the number of attempts that hold for one student: the exercise's own, and what they were allowed beyond. Pure. */
import type { ExerciseDates } from "@/lib/plot/to-exercise-phase";

/** Later than the exercise's own dates, where they are given; an earlier one gives nothing. */
export interface DateAllowance {
  readonly dueAt: Date | null;
  readonly closesAt: Date | null;
}

const latest = (a: Date, b: Date) => (a > b ? a : b);

/**
 * An exercise's dates as they hold for one student. A student who may hand in later than the exercise closes is never
 * closed before that; an exercise that never closes never does. Without an allowance they are the exercise's own.
 */
export function toOwnDates(
  { opensAt, dueAt, closesAt }: ExerciseDates,
  allowance: DateAllowance | undefined,
): ExerciseDates {
  const ownDueAt = latest(allowance?.dueAt ?? dueAt, dueAt);
  if (closesAt === null || allowance === undefined) return { opensAt, dueAt: ownDueAt, closesAt };
  const later = [allowance.closesAt, allowance.dueAt].flatMap((one) => one ?? []);
  return { opensAt, dueAt: ownDueAt, closesAt: later.reduce(latest, closesAt) };
}
