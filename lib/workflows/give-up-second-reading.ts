import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction } from "@/lib/data/store/database";
import { findReading } from "@/lib/data/store/find-reading";
import { writeTrail } from "@/lib/data/store/write-trail";
import { parseInput } from "@/lib/plot/parse-input";

const InputSchema = z.strictObject({ readingId: z.string() });

/**
 * Ends a second reading without a comparison: its reader may see the reference again, and cannot begin another reading of this
 * stone. Throws AppError `not-allowed`, `not-found`, or `conflict` where it is handed in or given up already.
 */
export async function giveUpSecondReading(viewer: Viewer, input: z.input<typeof InputSchema>): Promise<void> {
  requireRole(viewer, "write-reading");
  const { readingId } = parseInput(InputSchema, input);
  await runInTransaction(async (transaction) => {
    const { row } = requireAccess(viewer, "write-reading", await findReading(transaction, readingId));
    if (row.state !== "drawing") throw new AppError("conflict", "This second reading is not open any more.");
    await transaction.secondReading.update({ where: { id: readingId }, data: { state: "given-up" } });
    await writeTrail(transaction, viewer, {
      action: "give-up-second-reading",
      subjectKind: "stone",
      subjectId: row.stoneId,
    });
  });
}
