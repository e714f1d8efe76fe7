/** The review of one hand-in, as staff are sent it. Never sent to a student. */
import { z } from "zod";
import { GRADED_PROPERTIES } from "@/lib/plot/grades";
import { OverruleViewSchema } from "@/lib/plot/review";
import { CELL_STATES } from "@/lib/plot/staff-view";
import { DebriefViewSchema } from "@/lib/plot/student-view";

const instant = z.iso.datetime();

export const ReviewViewSchema = z.strictObject({
  debrief: DebriefViewSchema,
  /** Raised by every change of overrules and comments; sent back with a change. */
  revision: z.int(),
  state: z.enum(["scored", "released"]),
  /** All attempts of the student in this place of the exercise, the first one first; the last of them counts. */
  attempts: z.array(
    z.strictObject({
      sittingId: z.string(),
      /** Of the stone that it was sat on. */
      label: z.string(),
      state: z.enum(CELL_STATES),
      /** Null while it is not scored, and where the viewer reads the stone blind. */
      points: z.number().nullable(),
    }),
  ),
  /** Those of the comments that the viewer wrote. */
  ownComments: z.array(z.string()),
  /** Overrules that were undone or replaced, the last first. */
  ended: z.array(
    z.strictObject({
      ...OverruleViewSchema.omit({ applies: true, why: true }).shape,
      endedBy: z.string(),
      endedAt: instant,
    }),
  ),
  /** Where a stray may be taken into the reference. */
  stone: z.strictObject({
    stoneId: z.string(),
    trayId: z.string(),
    /** The newest version of its reference. */
    referenceVersion: z.int(),
    mayEdit: z.boolean(),
  }),
  /** What each graded property is worth, in points. */
  gradeWorth: z.array(z.strictObject({ property: z.enum(GRADED_PROPERTIES), points: z.number() })),
  /** Why nothing can be overruled now; null where it can. */
  locked: z.string().nullable(),
});
export type ReviewView = z.infer<typeof ReviewViewSchema>;
