import type { z } from "zod";
import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { runInTransaction } from "@/lib/data/store/database";
import { toColumn } from "@/lib/data/store/to-column";
import { parseInput } from "@/lib/plot/parse-input";
import { ReadingPlotSchema } from "@/lib/plot/second-reading";
import { ReadingInputSchema, requireOpenReading } from "@/lib/workflows/reading/write-reading";

/**
 * Saves a second reading that is being drawn; gives its new revision. Throws AppError `not-allowed`, `not-found`, `bad-input`,
 * or `conflict` where it was handed in or another tab saved first.
 */
export async function saveSecondReading(
  viewer: Viewer,
  input: z.input<typeof ReadingInputSchema>,
): Promise<{ revision: number }> {
  requireRole(viewer, "write-reading");
  const given = parseInput(ReadingInputSchema, input);
  return runInTransaction(async (transaction) => {
    const row = await requireOpenReading(transaction, viewer, given);
    const { revision } = await transaction.secondReading.update({
      where: { id: row.id },
      data: { plot: toColumn(ReadingPlotSchema, given.plot), revision: row.revision + 1 },
    });
    return { revision };
  });
}
