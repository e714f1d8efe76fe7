/** The rules of an exercise that are not numbers of the rubric: what the bench asks for. */
import { z } from "zod";

export const ExerciseRulesSchema = z.strictObject({
  /** The preparation card before the first mark: not shown, shown, or to be confirmed before plotting. */
  preparation: z.enum(["off", "asked", "required"]).default("asked"),
  /** The school's own rules for cleaning and handling, shown on the card in its own words. */
  schoolRules: z.string().max(4000).default(""),
});
export type ExerciseRules = z.infer<typeof ExerciseRulesSchema>;
