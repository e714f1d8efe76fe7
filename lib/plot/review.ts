/** What staff ruled and said of a plot: sent to its student with the released debrief, and not before. */
import { z } from "zod";
import { MAX_REASON, ReasonSchema, type Ruling, RulingSchema } from "@/lib/plot/overrule";

const instant = z.iso.datetime();

export const OverruleViewSchema = z.strictObject({
  overruleId: z.string(),
  ruling: RulingSchema,
  /** Empty where it was erased. */
  reason: z.string().max(MAX_REASON),
  byName: z.string(),
  madeAt: instant,
  /** False where what it is about is not there any more; `why` says so. A student is sent those alone that apply. */
  applies: z.boolean(),
  why: z.string().nullable(),
});
export type OverruleView = z.infer<typeof OverruleViewSchema>;

export const MAX_COMMENT = 2000;
/** Plain text; nothing in it is read as markup. */
export const CommentTextSchema = z.string().trim().min(1, "write something").max(MAX_COMMENT);

/** What a comment is on: `mark:ID` of the plot or `reference:ID` of the reference; null for the sitting. */
export const CommentSubjectSchema = z
  .string()
  .regex(/^(?:mark|reference):.{1,64}$/u)
  .nullable();

export const CommentViewSchema = z.strictObject({
  commentId: z.string(),
  subject: CommentSubjectSchema,
  text: z.string(),
  byName: z.string(),
  madeAt: instant,
  editedAt: instant.nullable(),
});
export type CommentView = z.infer<typeof CommentViewSchema>;

const base = { sittingId: z.string(), baseRevision: z.int().min(0) };

export const OverruleInputSchema = z.strictObject({ ...base, ruling: RulingSchema, reason: ReasonSchema });
export const UndoInputSchema = z.strictObject({ ...base, overruleId: z.string() });
/** A null `commentId` writes a new one. */
export const CommentInputSchema = z.strictObject({
  ...base,
  commentId: z.string().nullable(),
  subject: CommentSubjectSchema,
  text: CommentTextSchema,
});
export const DeleteCommentSchema = z.strictObject({ ...base, commentId: z.string() });

/** What a ruling is about, without its reason and without what it says: "the cause of mark m3". */
export function nameRuling(ruling: Ruling): string {
  switch (ruling.kind) {
    case "together":
    case "apart":
      return `the match of mark ${ruling.mark}`;
    case "cause":
      return `the cause of mark ${ruling.mark}`;
    case "grade":
      return `the points for ${ruling.property}`;
  }
}
