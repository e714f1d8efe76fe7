/**
 * What a student may be sent, as strict schemas: nothing of a reference, a decoy or another student's work is in
 * any of them but `DebriefViewSchema`, which is only made once the debrief is released. Data access parses what it
 * sends with these, so that a field too many is an error on the server and never a leak in the browser.
 */
import { z } from "zod";
import { DebriefNoteSchema } from "@/lib/plot/bench-note";
import { CHARACTERISTIC_CLASSES } from "@/lib/plot/characteristic";
import { DottingNoteRuleSchema, ExerciseRulesSchema } from "@/lib/plot/exercise-rules";
import { ScalesSchema } from "@/lib/plot/grades";
import { PlotSchema } from "@/lib/plot/plots-file";
import { CommentViewSchema, OverruleViewSchema } from "@/lib/plot/review";
import { ScoreDetailSchema, ScoreResultSchema } from "@/lib/plot/score-result";
import { PREPARATION_STEPS, SittingEventSchema } from "@/lib/plot/sitting-event";
import { ReferenceSchema, StoneBodySchema } from "@/lib/plot/stone";

const instant = z.iso.datetime();

/** Where a student's stone stands. `missed`: the exercise closed before it was handed in. */
export const STONE_STATES = ["not-begun", "on-the-bench", "handed-in", "debrief-ready", "missed"] as const;
export type StoneState = (typeof STONE_STATES)[number];

/** `ahead`: opens later; `open`; `late`: past due but still taken; `closed`. */
export const EXERCISE_PHASES = ["ahead", "open", "late", "closed"] as const;
export type ExercisePhase = (typeof EXERCISE_PHASES)[number];

export const MyStoneSchema = z.strictObject({
  /** The exercise's own row for the stone: what a sitting is opened with. */
  exerciseStoneId: z.string(),
  label: z.string(),
  cut: StoneBodySchema.shape.cut,
  weightCt: z.number().nullable(),
  /** Of the latest attempt. */
  state: z.enum(STONE_STATES),
  sittingId: z.string().nullable(),
  /** Which attempt that is; 0 before the first. */
  attempt: z.int(),
  /** How many more may be begun now. */
  attemptsLeft: z.int(),
  /** In place of another stone, for this student alone. */
  isRetake: z.boolean(),
  /** What this student calls the stone that must be handed in before this one opens; null: none. */
  opensAfter: z.string().nullable(),
  /** When it opens, where that still lies ahead and is later than the exercise; null otherwise. */
  opensAt: instant.nullable(),
  /** An earlier attempt whose debrief is released, the latest of them; none while the stone is on the bench again. */
  earlierDebriefId: z.string().nullable(),
  /** Of the student's own plot. */
  markCount: z.int(),
  handedInAt: instant.nullable(),
  /** When the time for a stone on the bench runs out; null without a limit. */
  endsAt: instant.nullable(),
  /** Points, once the debrief is released. */
  total: z.number().nullable(),
});

export const MyExerciseSchema = z.strictObject({
  exerciseId: z.string(),
  title: z.string(),
  notes: z.string(),
  sectionName: z.string(),
  opensAt: instant,
  dueAt: instant,
  closesAt: instant.nullable(),
  /** From when on debriefs open by themselves; null: when the instructor releases them. */
  debriefsAt: instant.nullable(),
  phase: z.enum(EXERCISE_PHASES),
  /** This student's own time for each stone, extra time included; null without a limit. */
  minutesPerStone: z.int().nullable(),
  stones: z.array(MyStoneSchema),
});
export type MyExercise = z.infer<typeof MyExerciseSchema>;

export const CharacteristicViewSchema = z.strictObject({
  name: z.string(),
  label: z.string(),
  class: z.enum(CHARACTERISTIC_CLASSES),
  definition: z.string(),
  like: z.array(z.string()),
});

/** A stone as whoever holds it may know it. */
export const StoneCardSchema = z.strictObject({ label: z.string(), ...StoneBodySchema.shape });
export type StoneCard = z.infer<typeof StoneCardSchema>;

/** A stone of which a student plots a few features for the hand-in check. What comes of it goes to staff alone. */
export const StoneToCheckSchema = z.strictObject({
  exerciseStoneId: z.string(),
  stone: StoneCardSchema,
  characteristics: z.array(CharacteristicViewSchema),
});
export type StoneToCheck = z.infer<typeof StoneToCheckSchema>;

/** When each step of the preparation was confirmed, ms since the sitting opened. */
export const PreparedSchema = z.partialRecord(z.enum(PREPARATION_STEPS), z.number());

export const BenchViewSchema = z.strictObject({
  sittingId: z.string(),
  exerciseId: z.string(),
  exerciseTitle: z.string(),
  dueAt: instant,
  closesAt: instant.nullable(),
  /** From when on debriefs open by themselves; null: when the instructor releases them. */
  debriefsAt: instant.nullable(),
  rules: ExerciseRulesSchema,
  stone: StoneCardSchema,
  scales: ScalesSchema,
  characteristics: z.array(CharacteristicViewSchema),
  openedAt: instant,
  /** When the time runs out, by the server's clock; null without a limit. */
  endsAt: instant.nullable(),
  /** The server's clock when this was read: the bench counts `atMs` from `openedAt` by it. */
  readAt: instant,
  plot: PlotSchema,
  prepared: PreparedSchema,
  lastSeq: z.int(),
  /** The `atMs` of the last step, 0 without one: what the bench does next is never earlier. */
  lastAtMs: z.number(),
  /** The tab or device that writes this sitting now, if any; an opaque id made by the browser. */
  writerId: z.string().nullable(),
  handedInAt: instant.nullable(),
  /** Handed in because the time ran out. */
  timedOut: z.boolean(),
});
export type BenchView = z.infer<typeof BenchViewSchema>;

/** The answer to a batch of events: what is now safe on disk. */
export const SavedSchema = z.strictObject({
  lastSeq: z.int(),
  /** When the time runs out, as it stands now; null without a limit. */
  endsAt: instant.nullable(),
});

/** Sent only for a sitting whose debrief is released, or to staff. */
export const DebriefViewSchema = z.strictObject({
  sittingId: z.string(),
  exerciseId: z.string(),
  exerciseTitle: z.string(),
  studentName: z.string(),
  stone: StoneCardSchema,
  scales: ScalesSchema,
  characteristics: z.array(CharacteristicViewSchema),
  openedAt: instant,
  handedInAt: instant,
  timedOut: z.boolean(),
  /** By which the bench knew dotting; the replay marks it by the same. */
  dotting: DottingNoteRuleSchema,
  releasedAt: instant.nullable(),
  plot: PlotSchema,
  prepared: PreparedSchema,
  reference: ReferenceSchema,
  referenceVersion: z.int(),
  rubricVersion: z.int(),
  /** The tolerance that was scored, so that the tolerance drawn is the same (girdle widths). */
  near: z.number(),
  far: z.number(),
  result: ScoreResultSchema,
  detail: ScoreDetailSchema,
  events: z.array(SittingEventSchema),
  /** What staff sent to the bench meanwhile, oldest first. */
  notes: z.array(DebriefNoteSchema),
  /** What staff overruled, in the order in which it was done, and what they wrote. */
  overrules: z.array(OverruleViewSchema),
  comments: z.array(CommentViewSchema),
});
export type DebriefView = z.infer<typeof DebriefViewSchema>;

/** Blank worksheets: what whoever holds a stone may know of it, and the scales. */
export const WorksheetsViewSchema = z.strictObject({
  /** The exercise and its section, or the tray. */
  title: z.string(),
  stones: z.array(StoneCardSchema),
  scales: ScalesSchema,
});
export type WorksheetsView = z.infer<typeof WorksheetsViewSchema>;
