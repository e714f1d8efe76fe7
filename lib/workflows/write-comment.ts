import type { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction, type Transaction } from "@/lib/data/store/database";
import { findComment } from "@/lib/data/store/find-comment";
import type { SittingRow } from "@/lib/data/store/find-sitting";
import { parseColumn } from "@/lib/data/store/parse-column";
import { parseInput } from "@/lib/plot/parse-input";
import { PlotSchema } from "@/lib/plot/plots-file";
import { CommentInputSchema } from "@/lib/plot/review";
import { ReferenceSchema } from "@/lib/plot/stone";
import { beginReviewStep } from "@/lib/workflows/review/begin-step";

type Input = z.output<typeof CommentInputSchema>;

function requireSubject({ handIn }: SittingRow, subject: string | null): void {
  const current = handIn?.results[0];
  if (subject === null || handIn === null || current === undefined) return;
  const id = subject.slice(subject.indexOf(":") + 1);
  const marks = subject.startsWith("mark:")
    ? parseColumn(PlotSchema, handIn.plot, "HandIn.plot").marks
    : parseColumn(ReferenceSchema, current.reference.body, "Reference.body").marks;
  if (marks.some((mark) => mark.id === id)) return;
  throw new AppError("bad-input", "The comment was not saved.", [
    { path: "subject", message: "there is no such mark" },
  ]);
}

async function put(transaction: Transaction, viewer: Viewer, input: Input, row: SittingRow): Promise<string> {
  const { sittingId, commentId, subject, text } = input;
  if (commentId !== null) {
    await transaction.reviewComment.update({
      where: { id: commentId },
      data: { text, editedAt: new Date() },
    });
    return commentId;
  }
  requireSubject(row, subject);
  const made = await transaction.reviewComment.create({
    data: { sittingId, subject, text, authorId: viewer.userId },
  });
  return made.id;
}

/**
 * Writes a comment on a sitting or on a mark of it, or changes one's own; its student reads it with the released debrief. Gives
 * the review's new revision. Throws AppError `not-allowed`, `not-found` (also for somebody else's comment),
 * `reading-blind`, `bad-input` or `conflict`.
 */
export async function writeComment(
  viewer: Viewer,
  input: z.input<typeof CommentInputSchema>,
): Promise<{ revision: number; commentId: string }> {
  requireRole(viewer, "review-sitting");
  const parsed = parseInput(CommentInputSchema, input);
  const { sittingId, baseRevision, commentId } = parsed;
  const isNew = commentId === null;
  return runInTransaction(async (transaction) => {
    if (!isNew) {
      requireAccess(viewer, "change-comment", await findComment(transaction, sittingId, commentId));
    }
    const { row, revision } = await beginReviewStep(transaction, viewer, {
      sittingId,
      baseRevision,
      words: isNew ? "wrote a comment" : "changed a comment",
      action: isNew ? "write-comment" : "change-comment",
    });
    return { revision, commentId: await put(transaction, viewer, parsed, row) };
  });
}
