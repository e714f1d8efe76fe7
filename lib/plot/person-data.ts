/** What the program holds of a person, handed to them: their own work, and results once they are released. */
import { z } from "zod";
import { PlotSchema } from "@/lib/plot/plots-file";
import { CommentSubjectSchema } from "@/lib/plot/review";
import { LineSchema } from "@/lib/plot/score-result";
import { SittingEventSchema } from "@/lib/plot/sitting-event";
import { RoleSchema } from "@/lib/plot/staff-view";
import { StoneEvidenceSchema } from "@/lib/plot/stone-check";
import { PreparedSchema } from "@/lib/plot/student-view";

const instant = z.iso.datetime();

export const PERSON_DATA_FORMAT = "loupework/person";

/** Strict: nothing of a reference, a result before its release, or anybody else has a place in it. */
export const PersonDataSchema = z.strictObject({
  format: z.literal(PERSON_DATA_FORMAT),
  version: z.literal(1),
  madeAt: instant,
  account: z.strictObject({
    login: z.string(),
    name: z.string(),
    role: RoleSchema,
    createdAt: instant,
    lastSignInAt: instant.nullable(),
  }),
  sections: z.array(z.strictObject({ name: z.string(), term: z.string(), enrolledAt: instant.nullable() })),
  sittings: z.array(
    z.strictObject({
      exercise: z.string(),
      section: z.string(),
      stone: z.string(),
      attempt: z.int(),
      openedAt: instant,
      handedInAt: instant.nullable(),
      plot: PlotSchema,
      prepared: PreparedSchema,
      /** Every step, in order. */
      log: z.array(SittingEventSchema),
      notes: z.array(z.strictObject({ sentAt: instant, text: z.string() })),
      /** Null until the debrief is released. */
      result: z
        .strictObject({
          releasedAt: instant,
          total: z.number(),
          lines: z.array(LineSchema),
          /** What staff overruled and wrote. */
          overrules: z.array(z.strictObject({ about: z.string(), reason: z.string(), madeAt: instant })),
          comments: z.array(
            z.strictObject({ subject: CommentSubjectSchema, text: z.string(), madeAt: instant }),
          ),
        })
        .nullable(),
    }),
  ),
  /** Hand-in checks that they sent. What came of one is for staff. */
  checks: z.array(z.strictObject({ sentAt: instant, evidence: StoneEvidenceSchema })),
  /** What they were allowed beyond an exercise's own rules. */
  allowances: z.array(
    z.strictObject({
      exercise: z.string(),
      extraMinutes: z.int(),
      extraAttempts: z.int(),
      dueAt: instant.nullable(),
      closesAt: instant.nullable(),
    }),
  ),
  retakes: z.array(z.strictObject({ exercise: z.string(), grantedAt: instant })),
  /** What the trail says that they did. */
  trail: z.array(z.strictObject({ at: instant, action: z.string() })),
});
export type PersonData = z.infer<typeof PersonDataSchema>;
