/** The rules of an exercise that are not numbers of the rubric: what the bench asks for, and how long a stone may take. */
import { z } from "zod";
import { DEFAULT_RUBRIC, RubricSchema } from "@/lib/plot/rubric";

/** When the bench asks whether the stone is clean. Apart from the rubric's own numbers: asking costs no points. */
export const DottingNoteRuleSchema = z.strictObject({
  isOn: z.boolean().default(true),
  burstDots: RubricSchema.shape.dust.shape.burstDots.default(DEFAULT_RUBRIC.dust.burstDots),
  burstGapMs: RubricSchema.shape.dust.shape.burstGapMs.default(DEFAULT_RUBRIC.dust.burstGapMs),
});
export type DottingNoteRule = z.infer<typeof DottingNoteRuleSchema>;

/** Which marks a proof is asked for: none; every dot; every mark of a characteristic that lies inside. */
export const PROOF_SCOPES = ["none", "dots", "inside"] as const;

export const LONGEST_MINUTES = 600;
export const MOST_ATTEMPTS = 10;

export const ExerciseRulesSchema = z.strictObject({
  /** The preparation card before the first mark: not shown, shown, or to be confirmed before plotting. */
  preparation: z.enum(["off", "asked", "required"]).default("asked"),
  /** The school's own rules for cleaning and handling, shown on the card in its own words. */
  schoolRules: z.string().max(4000).default(""),
  proofs: z.enum(PROOF_SCOPES).default("none"),
  /** True: nothing is handed in before every mark asked about has a proof, save when the time runs out. */
  areProofsRequired: z.boolean().default(false),
  dotting: DottingNoteRuleSchema.default(() => DottingNoteRuleSchema.parse({})),
  /** How long a student may take over one stone; null: as long as the exercise is open. */
  minutesPerStone: z.int().min(1).max(LONGEST_MINUTES).nullable().default(null),
  /** How many times a student may sit each stone, until its debrief is released; the latest counts. */
  attempts: z.int().min(1).max(MOST_ATTEMPTS).default(1),
  /** True: a stone opens once the one before it is handed in. */
  isInOrder: z.boolean().default(false),
  /** True: students are told "Stone 1, 2 …", each in an order of their own, in place of the labels. */
  areLabelsHidden: z.boolean().default(false),
});
export type ExerciseRules = z.infer<typeof ExerciseRulesSchema>;

export const DEFAULT_RULES: ExerciseRules = ExerciseRulesSchema.parse({});
