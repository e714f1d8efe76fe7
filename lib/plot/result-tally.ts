/** What is kept of a result besides its counts, and by what tallies are added up. */
import { z } from "zod";
import { IdSchema } from "@/lib/plot/mark";

/** Which reference marks of a result were found and which overlooked, by id; optional ones are in neither. */
export const MarkOutcomeSchema = z.strictObject({ found: z.array(IdSchema), overlooked: z.array(IdSchema) });
export type MarkOutcome = z.infer<typeof MarkOutcomeSchema>;

/**
 * What a sum of an exercise's tallies is over: the whole exercise, one of its stones (key: ExerciseStone's id), one
 * student, or the hand-ins of one week (key: `toWeek`).
 */
export const TALLY_SUM_KINDS = ["exercise", "stone", "student", "week"] as const;
export type TallySumKind = (typeof TALLY_SUM_KINDS)[number];

const DAY_MS = 86_400_000;

/** The Monday (UTC) of the week that an instant lies in, `YYYY-MM-DD`. */
export function toWeek(at: Date): string {
  const daysSinceMonday = (at.getUTCDay() + 6) % 7;
  return new Date(at.getTime() - daysSinceMonday * DAY_MS).toISOString().slice(0, 10);
}
