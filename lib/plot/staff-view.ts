/** What instructors and directors may be sent. Never sent to a student. */
import { z } from "zod";
import { SentNoteSchema } from "@/lib/plot/bench-note";
import { ExerciseRulesSchema } from "@/lib/plot/exercise-rules";
import { ScalesSchema } from "@/lib/plot/grades";
import { HandOutViewSchema } from "@/lib/plot/hand-out";
import { CauseSchema } from "@/lib/plot/mark";
import { PlotSchema } from "@/lib/plot/plots-file";
import { OlderResultsSchema } from "@/lib/plot/rescore-view";
import { RubricSchema } from "@/lib/plot/rubric";
import { ReferenceSchema, StoneBodySchema } from "@/lib/plot/stone";
import { CERTAINTIES, CHECK_OUTCOMES, StoneVerdictSchema } from "@/lib/plot/stone-check";
import { StaffPhotoViewSchema } from "@/lib/plot/stone-photo";
import { CharacteristicViewSchema, EXERCISE_PHASES, StoneCardSchema } from "@/lib/plot/student-view";

const instant = z.iso.datetime();

export const ROLES = ["student", "instructor", "director"] as const;
export const RoleSchema = z.enum(ROLES);
export type Role = z.infer<typeof RoleSchema>;

export const TrayRowSchema = z.strictObject({
  trayId: z.string(),
  name: z.string(),
  notes: z.string(),
  stoneCount: z.int(),
  withReference: z.int(),
});
export type TrayRow = z.infer<typeof TrayRowSchema>;

export const StoneRowSchema = z.strictObject({
  stoneId: z.string(),
  label: z.string(),
  position: z.int(),
  cut: StoneBodySchema.shape.cut,
  proportions: StoneBodySchema.shape.proportions,
  weightCt: z.number().nullable(),
  /** 0 where no reference was saved yet. */
  referenceVersion: z.int(),
  referenceMarks: z.int(),
  /** The viewer is reading it blind: its marks and grade are kept back. */
  isBlind: z.boolean(),
  clarity: z.string().nullable(),
  handIns: z.int(),
  meanTotal: z.number().nullable(),
  /** Null while it is in the tray. */
  out: HandOutViewSchema.nullable(),
  /** Hand-in checks that contradict the label and that nobody has settled yet. */
  mismatches: z.int(),
});

export const TrayViewSchema = z.strictObject({
  trayId: z.string(),
  name: z.string(),
  notes: z.string(),
  /** Whether the viewer may change the tray, its stones and their references. */
  mayEdit: z.boolean(),
  stones: z.array(StoneRowSchema),
  characteristics: z.array(CharacteristicViewSchema),
});
export type TrayView = z.infer<typeof TrayViewSchema>;

/** A hand-in check as a list tells of it. */
export const StoneCheckRowSchema = z.strictObject({
  checkId: z.string(),
  stoneId: z.string().nullable(),
  /** What the label said; null where it was not asked about. */
  label: z.string().nullable(),
  byName: z.string(),
  madeAt: instant,
  features: z.int(),
  weightCt: z.number().nullable(),
  /** Null while it is being worked out, and where it is kept back. */
  verdict: StoneVerdictSchema.nullable(),
  /** The viewer is reading a stone of the tray blind. */
  isKeptBack: z.boolean(),
  outcome: z.enum(CHECK_OUTCOMES).nullable(),
  certainty: z.enum(CERTAINTIES).nullable(),
  settledBy: z.string().nullable(),
});
export type StoneCheckRow = z.infer<typeof StoneCheckRowSchema>;

export const ReferenceVersionSchema = z.strictObject({
  version: z.int(),
  authorName: z.string(),
  createdAt: instant,
  note: z.string(),
  marks: z.int(),
  clarity: z.string(),
});

export const StoneViewSchema = z.strictObject({
  stoneId: z.string(),
  trayId: z.string(),
  trayName: z.string(),
  label: z.string(),
  position: z.int(),
  body: StoneBodySchema,
  /** Raised by every change of the stone's body; sent back with a save, so that two people cannot overwrite each other. */
  revision: z.int(),
  /** Whether the viewer may change the stone and save a reference. */
  mayEdit: z.boolean(),
  /** The viewer's own second reading of it that is not handed in: then nothing of the reference is here. */
  openReadingId: z.string().nullable(),
  reference: ReferenceSchema.nullable(),
  referenceVersion: z.int(),
  versions: z.array(ReferenceVersionSchema),
  photos: z.array(StaffPhotoViewSchema),
  /** Null while it is in the tray. */
  out: HandOutViewSchema.nullable(),
  /** Its last hand-outs that were taken back, newest first. */
  handOuts: z.array(HandOutViewSchema),
  characteristics: z.array(CharacteristicViewSchema),
  scales: ScalesSchema,
});
export type StoneView = z.infer<typeof StoneViewSchema>;

export const SectionRowSchema = z.strictObject({
  sectionId: z.string(),
  name: z.string(),
  term: z.string(),
  students: z.int(),
  instructors: z.array(z.string()),
});
export type SectionRow = z.infer<typeof SectionRowSchema>;

export const ExerciseRowSchema = z.strictObject({
  exerciseId: z.string(),
  title: z.string(),
  sectionId: z.string(),
  sectionName: z.string(),
  opensAt: instant,
  dueAt: instant,
  closesAt: instant.nullable(),
  phase: z.enum(EXERCISE_PHASES),
  stones: z.int(),
  students: z.int(),
  handedIn: z.int(),
  released: z.int(),
});
export type ExerciseRow = z.infer<typeof ExerciseRowSchema>;

/** `scoring`: handed in, the result is still being worked out. */
export const CELL_STATES = ["not-begun", "on-the-bench", "scoring", "scored", "released"] as const;

export const ReviewCellSchema = z.strictObject({
  studentId: z.string(),
  exerciseStoneId: z.string(),
  /** Of the latest attempt. */
  sittingId: z.string().nullable(),
  /** Which attempt on its stone that is; 0 before the first. */
  attempt: z.int(),
  /** The other stone that it was sat on in place of this one, as a retake. */
  retakeOn: z.string().nullable(),
  /** The attempts before it, the first one first: they count no more, and each has a debrief of its own. */
  earlier: z.array(
    z.strictObject({
      sittingId: z.string(),
      state: z.enum(CELL_STATES),
      /** Of the stone that it was sat on. */
      label: z.string(),
    }),
  ),
  state: z.enum(CELL_STATES),
  markCount: z.int(),
  total: z.number().nullable(),
  found: z.int(),
  overlooked: z.int(),
  straysByCause: z.partialRecord(CauseSchema, z.int()),
  /** Steps from the reference's clarity: positive is harsher. Null where either is missing. */
  clarityBias: z.int().nullable(),
  suspectStone: z.string().nullable(),
  /** Overrules in force, and comments. */
  overrules: z.int(),
  comments: z.int(),
  /** Handed in because the time ran out. */
  timedOut: z.boolean(),
});
export type ReviewCell = z.infer<typeof ReviewCellSchema>;

export const ReviewGridSchema = z.strictObject({
  exercise: ExerciseRowSchema,
  /** Raised by every change of the exercise; sent back with an update, so that two people cannot overwrite each other. */
  revision: z.int(),
  notes: z.string(),
  /** From when on debriefs open by themselves; null: when staff release them. */
  debriefsAt: instant.nullable(),
  rules: ExerciseRulesSchema,
  rubric: RubricSchema,
  rubricVersion: z.int(),
  /** Current results by an older rubric, reference or body of a stone than there is now. */
  older: OlderResultsSchema,
  /** A rescore that is being worked out or waits to be applied. */
  openRescore: z.enum(["working", "ready"]).nullable(),
  stones: z.array(
    z.strictObject({
      exerciseStoneId: z.string(),
      stoneId: z.string(),
      label: z.string(),
      clarity: z.string().nullable(),
      /** Later than the exercise; null: with it. */
      opensAt: instant.nullable(),
      /** The viewer is reading it blind: what was scored on it is kept back. */
      isBlind: z.boolean(),
    }),
  ),
  students: z.array(
    z.strictObject({
      studentId: z.string(),
      name: z.string(),
      /** Beyond the exercise's own time limit. */
      extraMinutes: z.int(),
      /** Of each stone, beyond the exercise's own number. */
      extraAttempts: z.int(),
      /** In place of the exercise's own dates; null: as everybody's. */
      dueAt: instant.nullable(),
      closesAt: instant.nullable(),
      /** Of the latest of these; for staff alone. */
      extraReason: z.string(),
    }),
  ),
  /** One for every student and stone, students first. */
  cells: z.array(ReviewCellSchema),
});
export type ReviewGrid = z.infer<typeof ReviewGridSchema>;

/** A sitting that is not handed in yet, as staff may look on. */
export const BenchWatchSchema = z.strictObject({
  sittingId: z.string(),
  studentName: z.string(),
  label: z.string(),
  stone: StoneCardSchema,
  characteristics: z.array(CharacteristicViewSchema),
  plot: PlotSchema,
  /** Raised by every step of the plot. */
  lastSeq: z.int(),
  /** The stone's newest reference; null where none was saved yet, and to its second reader. */
  reference: ReferenceSchema.nullable(),
  /** The viewer is reading the stone blind. */
  isBlind: z.boolean(),
  /** What staff have sent to this bench, oldest first. */
  notes: z.array(SentNoteSchema),
  /** When the time runs out; null without a limit. */
  endsAt: instant.nullable(),
});
export type BenchWatchView = z.infer<typeof BenchWatchSchema>;

export const PersonRowSchema = z.strictObject({
  userId: z.string(),
  login: z.string(),
  name: z.string(),
  role: RoleSchema,
  active: z.boolean(),
  /** Has no password yet: waits for an invitation to be used. */
  isInvited: z.boolean(),
  isErased: z.boolean(),
  sections: z.array(z.string()),
  lastSignInAt: instant.nullable(),
});
export type PersonRow = z.infer<typeof PersonRowSchema>;

export const TrailRowSchema = z.strictObject({
  at: instant,
  actorName: z.string(),
  action: z.string(),
  subjectKind: z.string(),
  subjectId: z.string(),
  detail: z.string(),
});
export type TrailRow = z.infer<typeof TrailRowSchema>;

export const OverviewSchema = z.strictObject({
  trays: z.int(),
  stones: z.int(),
  withoutReference: z.int(),
  /** Stones out of their trays, those of them that are overdue, and checks that contradict a label. */
  out: z.int(),
  overdue: z.int(),
  mismatches: z.array(z.strictObject({ trayId: z.string(), trayName: z.string(), count: z.int() })),
  exercises: z.array(ExerciseRowSchema),
});
export type Overview = z.infer<typeof OverviewSchema>;
