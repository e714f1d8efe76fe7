/** The exercise set file, `loupework/exercise-set` version 1 (design.md). */
import { z } from "zod";
import { AddedCharacteristicSchema } from "@/lib/plot/characteristic";
import { ScaleOverridesSchema } from "@/lib/plot/grades";
import { RubricOverridesSchema } from "@/lib/plot/rubric";
import { StoneSchema } from "@/lib/plot/stone";

export const EXERCISE_SET_FORMAT = "loupework/exercise-set";

export const ExerciseSetSchema = z.strictObject({
  format: z.literal(EXERCISE_SET_FORMAT),
  version: z.literal(1),
  title: z.string().min(1).max(200),
  notes: z.string().max(10_000).optional(),
  rubric: RubricOverridesSchema.optional(),
  scales: ScaleOverridesSchema.optional(),
  characteristics: z.array(AddedCharacteristicSchema).max(200).optional(),
  stones: z.array(StoneSchema).max(1000),
});
export type ExerciseSet = z.infer<typeof ExerciseSetSchema>;
