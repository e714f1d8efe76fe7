import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction } from "@/lib/data/store/database";
import { discardRescoreRow, findRescore } from "@/lib/data/store/find-rescore";
import { parseInput } from "@/lib/plot/parse-input";

const InputSchema = z.strictObject({ rescoreId: z.string() });

/**
 * Stops a rescore that is being worked out, or throws away one that waits; every result stays as it is. Throws
 * AppError `not-allowed`, `not-found`, or `conflict` where it is over already.
 */
export async function discardRescore(viewer: Viewer, input: z.input<typeof InputSchema>): Promise<void> {
  requireRole(viewer, "rescore-exercise");
  const { rescoreId } = parseInput(InputSchema, input);
  return runInTransaction(async (transaction) => {
    const { row } = requireAccess(viewer, "rescore-exercise", await findRescore(transaction, rescoreId));
    if (row.state !== "working" && row.state !== "ready") {
      throw new AppError("conflict", "This rescore is over already; nothing was changed.");
    }
    await discardRescoreRow(transaction, rescoreId, viewer);
  });
}
