/** The class as it happens, as staff may watch it. Never sent to a student. */
import { z } from "zod";
import { SentNoteSchema } from "@/lib/plot/bench-note";
import { ExerciseRulesSchema } from "@/lib/plot/exercise-rules";
import { PREPARATION_STEPS } from "@/lib/plot/sitting-event";

const instant = z.iso.datetime();

/**
 * Whether a bench's page is open: `here` and looked at, `away` (open behind another page), `gone` (closed, or not
 * heard of any more), `unheard` (not heard of since the server started).
 */
export const PRESENCES = ["here", "away", "gone", "unheard"] as const;
export type Presence = (typeof PRESENCES)[number];

/** One sitting on the bench, or handed in a few minutes ago. Times are the server's. */
export const WatchRowSchema = z.strictObject({
  sittingId: z.string(),
  studentId: z.string(),
  studentName: z.string(),
  sectionId: z.string(),
  sectionName: z.string(),
  exerciseId: z.string(),
  exerciseTitle: z.string(),
  stoneLabel: z.string(),
  openedAt: instant,
  handedInAt: instant.nullable(),
  /** When its time runs out; null where it is not timed. */
  endsAt: instant.nullable(),
  /** When the last step of the log came in. */
  lastEventAt: instant.nullable(),
  /** Raised by every step: a plot that was read at another is older or newer. */
  lastSeq: z.int(),
  markCount: z.int(),
  preparation: ExerciseRulesSchema.shape.preparation,
  prepared: z.array(z.enum(PREPARATION_STEPS)),
  /** The burst that the latest dots make, by the exercise's rule, and when its last dot was put. */
  dotting: z.strictObject({ dots: z.int(), lastDotAt: instant }).nullable(),
  presence: z.enum(PRESENCES),
  presenceSince: instant.nullable(),
  lastNote: SentNoteSchema.nullable(),
});
export type WatchRow = z.infer<typeof WatchRowSchema>;

/** Everything there is to watch, at one moment. */
export const WatchSchema = z.strictObject({ readAt: instant, rows: z.array(WatchRowSchema) });
export type Watch = z.infer<typeof WatchSchema>;

/** What became different: rows put, by `sittingId`, and sittings that are not to be watched any more. */
export const WatchChangeSchema = z.strictObject({
  readAt: instant,
  put: z.array(WatchRowSchema),
  removed: z.array(z.string()),
});
export type WatchChange = z.infer<typeof WatchChangeSchema>;
