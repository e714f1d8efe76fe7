import type { ExercisePhase } from "@/lib/plot/student-view";

/** The dates of an exercise; without `closesAt` it is never closed. */
export interface ExerciseDates {
  readonly opensAt: Date;
  readonly dueAt: Date;
  readonly closesAt: Date | null;
}

/** Where an exercise stands at an instant. A date itself belongs to what comes after it. */
export function toExercisePhase({ opensAt, dueAt, closesAt }: ExerciseDates, now: Date): ExercisePhase {
  if (now < opensAt) return "ahead";
  if (closesAt !== null && now >= closesAt) return "closed";
  return now >= dueAt ? "late" : "open";
}
