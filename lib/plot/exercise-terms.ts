/** What the marks and grades of a tray's stones, and of the exercises set from it, are held against. */
import { z } from "zod";
import {
  AddedCharacteristicSchema,
  buildCharacteristicTable,
  type CharacteristicTable,
} from "@/lib/plot/characteristic";
import { resolveScales, ScaleOverridesSchema, type Scales } from "@/lib/plot/grades";
import { RubricOverridesSchema } from "@/lib/plot/rubric";

/** The scales and characteristics of an exercise, where they differ from the defaults. */
export const ExerciseTermsSchema = z.strictObject({
  scales: ScaleOverridesSchema.default({}),
  characteristics: z.array(AddedCharacteristicSchema).max(200).default([]),
});
export type ExerciseTerms = z.infer<typeof ExerciseTermsSchema>;

/** The same for a tray, with the rubric that its exercises begin with. */
export const TrayTermsSchema = z.strictObject({
  ...ExerciseTermsSchema.shape,
  rubric: RubricOverridesSchema.default({}),
});
export type TrayTerms = z.infer<typeof TrayTermsSchema>;

/** A tray that changes nothing of the defaults. */
export const DEFAULT_TERMS: TrayTerms = { scales: {}, characteristics: [], rubric: {} };

/** Terms with the defaults filled in. */
export function resolveTerms(terms: ExerciseTerms): { scales: Scales; characteristics: CharacteristicTable } {
  return {
    scales: resolveScales(terms.scales),
    characteristics: buildCharacteristicTable(terms.characteristics),
  };
}
