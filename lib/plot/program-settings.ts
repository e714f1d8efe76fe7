/** What a director sets for the whole program, and what the screen for it is sent. */
import { z } from "zod";
import { RubricSchema } from "@/lib/plot/rubric";

export const ProgramSettingsSchema = z.strictObject({
  /** What a new exercise starts with; null: Loupework's own numbers (`DEFAULT_RUBRIC`), whatever they come to be. */
  rubric: RubricSchema.nullable(),
});

export const ProgramSettingsViewSchema = z.strictObject({
  /** 0 until something is changed for the first time. */
  revision: z.int().min(0),
  rubric: RubricSchema,
  /** Who made the last change and when; null until there is one. */
  changed: z.strictObject({ byName: z.string(), at: z.iso.datetime() }).nullable(),
});
export type ProgramSettingsView = z.infer<typeof ProgramSettingsViewSchema>;
