import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction } from "@/lib/data/store/database";
import { findStone } from "@/lib/data/store/find-stone";
import { findWhyNoReading } from "@/lib/data/store/find-why-no-reading";
import { toColumn } from "@/lib/data/store/to-column";
import { writeTrail } from "@/lib/data/store/write-trail";
import { parseInput } from "@/lib/plot/parse-input";
import { EMPTY_READING, ReadingPlotSchema } from "@/lib/plot/second-reading";

const InputSchema = z.strictObject({ stoneId: z.string() });

/**
 * Begins a second reading of a stone: from now until the hand-in its reader is shown nothing of the reference. One that is
 * begun already is given back. Throws AppError `not-allowed`, `not-found`, or `conflict` where the stone has no reference, or
 * the viewer wrote one of its versions or has read it before.
 */
export async function startSecondReading(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ readingId: string }> {
  requireRole(viewer, "second-read");
  const { stoneId } = parseInput(InputSchema, input);
  return runInTransaction(async (transaction) => {
    const { row } = requireAccess(viewer, "second-read", await findStone(transaction, stoneId));
    const own = await transaction.secondReading.findMany({ where: { stoneId, readerId: viewer.userId } });
    const open = own.find(({ state }) => state === "drawing");
    if (open !== undefined) return { readingId: open.id };
    const whyNot = findWhyNoReading(viewer, row, own.length > 0);
    if (whyNot !== null) throw new AppError("conflict", whyNot);
    const { id } = await transaction.secondReading.create({
      data: { stoneId, readerId: viewer.userId, plot: toColumn(ReadingPlotSchema, EMPTY_READING) },
    });
    await writeTrail(transaction, viewer, {
      action: "start-second-reading",
      subjectKind: "stone",
      subjectId: stoneId,
    });
    return { readingId: id };
  });
}
