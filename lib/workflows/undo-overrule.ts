import type { z } from "zod";
import { refuseAsNotFound, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { runInTransaction } from "@/lib/data/store/database";
import { parseColumn } from "@/lib/data/store/parse-column";
import { RulingSchema } from "@/lib/plot/overrule";
import { parseInput } from "@/lib/plot/parse-input";
import { nameRuling, UndoInputSchema } from "@/lib/plot/review";
import { beginReviewStep } from "@/lib/workflows/review/begin-step";
import { overruleResult } from "@/lib/workflows/review/overrule-result";

/**
 * Undoes an overrule, whoever made it: the points are what they would be without it, and that it was made stays on record.
 * Gives the review's new revision. Throws AppError `not-allowed`, `not-found`, `reading-blind` or `conflict`.
 */
export async function undoOverrule(
  viewer: Viewer,
  input: z.input<typeof UndoInputSchema>,
): Promise<{ revision: number }> {
  requireRole(viewer, "review-sitting");
  const { sittingId, baseRevision, overruleId } = parseInput(UndoInputSchema, input);
  return runInTransaction(async (transaction) => {
    const found = await transaction.overrule.findFirst({ where: { id: overruleId, sittingId } });
    if (found === null) throw refuseAsNotFound();
    const ruling = parseColumn(RulingSchema, found.ruling, "Overrule.ruling");
    const words = `undid an overrule of ${nameRuling(ruling)}`;
    const terms = { sittingId, baseRevision, words, action: "undo-overrule" };
    const { revision } = await beginReviewStep(transaction, viewer, terms);
    if (found.endedAt !== null) throw refuseAsNotFound();
    await transaction.overrule.update({
      where: { id: overruleId },
      data: { endedAt: new Date(), endedById: viewer.userId },
    });
    await overruleResult(transaction, sittingId);
    return { revision };
  });
}
