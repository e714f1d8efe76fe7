/** What instructors and directors may be sent of a rubric's editor and of a rescore. Never sent to a student. */
import { z } from "zod";
import { ExerciseTermsSchema } from "@/lib/plot/exercise-terms";
import { PlotSchema } from "@/lib/plot/plots-file";
import { RescoreStateSchema, RescoreSummarySchema } from "@/lib/plot/rescore";
import { RubricSchema } from "@/lib/plot/rubric";
import { ReferenceSchema } from "@/lib/plot/stone";
import { StoneCardSchema } from "@/lib/plot/student-view";

const instant = z.iso.datetime();

/** How many current results were scored by an older reference, body of the stone, or rubric; `results`: by any. */
export const OlderResultsSchema = z.strictObject({
  results: z.int(),
  byReference: z.int(),
  byBody: z.int(),
  byRubric: z.int(),
  released: z.int(),
});
export type OlderResults = z.infer<typeof OlderResultsSchema>;

/** One result whose points a rescore would change. Points, as they are and as they would be. */
export const RescoreRowSchema = z.strictObject({
  sittingId: z.string(),
  studentName: z.string(),
  stoneLabel: z.string(),
  attempt: z.int(),
  released: z.boolean(),
  before: z.number(),
  after: z.number(),
});
export type RescoreRow = z.infer<typeof RescoreRowSchema>;

export const RescoreJobSchema = z.strictObject({
  rescoreId: z.string(),
  state: RescoreStateSchema,
  total: z.int(),
  done: z.int(),
  failed: z.int(),
  startedAt: instant,
  startedByName: z.string(),
  endedAt: instant.nullable(),
  endedByName: z.string().nullable(),
  /** Whether a newer rubric, reference or body has overtaken it: it can then no longer be applied. */
  overtaken: z.boolean(),
  /** While it is ready: every result whose points change, the biggest change first. */
  rows: z.array(RescoreRowSchema),
  summary: RescoreSummarySchema.nullable(),
});
export type RescoreJob = z.infer<typeof RescoreJobSchema>;

export const RescoreViewSchema = z.strictObject({
  exerciseId: z.string(),
  exerciseTitle: z.string(),
  rubricVersion: z.int(),
  older: OlderResultsSchema,
  /** The rescore that is under way or waits, or else the last one; null where there never was one. */
  job: RescoreJobSchema.nullable(),
});
export type RescoreView = z.infer<typeof RescoreViewSchema>;

/** An exercise in which a stone is set, with its results on that stone that are older than its newest version. */
export const TouchedExerciseSchema = z.strictObject({
  exerciseId: z.string(),
  title: z.string(),
  sectionName: z.string(),
  results: z.int(),
  older: z.int(),
});
export type TouchedExercise = z.infer<typeof TouchedExerciseSchema>;

/** A plot of the exercise with all that it is scored by but the rubric. */
export const RubricExampleSchema = z.strictObject({
  sittingId: z.string(),
  studentName: z.string(),
  stone: StoneCardSchema,
  reference: ReferenceSchema,
  plot: PlotSchema,
});
export type RubricExample = z.infer<typeof RubricExampleSchema>;

export const RubricBenchSchema = z.strictObject({
  exerciseId: z.string(),
  exerciseTitle: z.string(),
  rubric: RubricSchema,
  rubricVersion: z.int(),
  /** The numbers that a new exercise of the program starts with. */
  defaults: RubricSchema,
  /** Who made each version, newest first. */
  versions: z.array(z.strictObject({ version: z.int(), authorName: z.string(), createdAt: instant })),
  terms: ExerciseTermsSchema,
  /** Results that are scored now: what a saved change could rescore. */
  results: z.int(),
  /** Plots that can be the example, by student and stone. */
  plots: z.array(z.strictObject({ sittingId: z.string(), studentName: z.string(), stoneLabel: z.string() })),
  example: RubricExampleSchema.nullable(),
});
export type RubricBench = z.infer<typeof RubricBenchSchema>;
