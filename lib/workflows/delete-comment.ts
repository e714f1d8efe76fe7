import type { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { runInTransaction } from "@/lib/data/store/database";
import { findComment } from "@/lib/data/store/find-comment";
import { parseInput } from "@/lib/plot/parse-input";
import { DeleteCommentSchema } from "@/lib/plot/review";
import { beginReviewStep } from "@/lib/workflows/review/begin-step";

/**
 * Deletes one's own comment; its text is gone for good. Gives the review's new revision. Throws AppError `not-allowed`,
 * `not-found` (also for somebody else's comment), `reading-blind` or `conflict`.
 */
export async function deleteComment(
  viewer: Viewer,
  input: z.input<typeof DeleteCommentSchema>,
): Promise<{ revision: number }> {
  requireRole(viewer, "review-sitting");
  const { sittingId, baseRevision, commentId } = parseInput(DeleteCommentSchema, input);
  return runInTransaction(async (transaction) => {
    requireAccess(viewer, "change-comment", await findComment(transaction, sittingId, commentId));
    const terms = { sittingId, baseRevision, words: "deleted a comment", action: "delete-comment" };
    const { revision } = await beginReviewStep(transaction, viewer, terms);
    await transaction.reviewComment.update({
      where: { id: commentId },
      data: { text: "", deletedAt: new Date() },
    });
    return { revision };
  });
}
