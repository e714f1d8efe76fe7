import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { getDatabase, runInTransaction } from "@/lib/data/store/database";
import { requireUnblinded } from "@/lib/data/store/find-open-reading";
import { findStone } from "@/lib/data/store/find-stone";
import { writeTrail } from "@/lib/data/store/write-trail";
import { parseInput } from "@/lib/plot/parse-input";
import { readStoneEvidence } from "@/lib/workflows/evidence/read-stone-evidence";

const InputSchema = z.strictObject({ stoneId: z.string(), key: z.string().max(60) });

/**
 * Sets a suggested place aside until half as many students again, and at least three more, have marked it. Throws AppError
 * `not-allowed`, `not-found`, `reading-blind`, `bad-input`, or `conflict` where the place is not suggested (any more).
 */
export async function dismissSuggestion(viewer: Viewer, input: z.input<typeof InputSchema>): Promise<void> {
  requireRole(viewer, "edit-tray");
  const { stoneId, key } = parseInput(InputSchema, input);
  const { row } = requireAccess(viewer, "edit-tray", await findStone(getDatabase(), stoneId));
  await requireUnblinded(viewer, [stoneId]);
  const { suggestions } = await readStoneEvidence(row);
  const suggestion = suggestions.find((one) => one.key === key);
  if (suggestion === undefined) {
    throw new AppError(
      "conflict",
      "This place is not suggested any more: the evidence has changed meanwhile.",
    );
  }
  await runInTransaction(async (transaction) => {
    const [x, y] = suggestion.at;
    const { view, students } = suggestion;
    await transaction.evidenceDismissal.create({
      data: { stoneId, view, x, y, students, dismissedById: viewer.userId },
    });
    await writeTrail(transaction, viewer, {
      action: "dismiss-suggestion",
      subjectKind: "stone",
      subjectId: stoneId,
    });
  });
}
