import type { z } from "zod";
import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction } from "@/lib/data/store/database";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toColumn } from "@/lib/data/store/to-column";
import { writeTrail } from "@/lib/data/store/write-trail";
import { parseInput } from "@/lib/plot/parse-input";
import { ReadingFiguresSchema, ReadingPlotSchema } from "@/lib/plot/second-reading";
import { ReferenceSchema } from "@/lib/plot/stone";
import { compareReadings } from "@/lib/workflows/reading/compare-readings";
import { readReadingGround } from "@/lib/workflows/reading/read-reading-ground";
import { ReadingInputSchema, requireOpenReading } from "@/lib/workflows/reading/write-reading";

/**
 * Hands a second reading in: it is frozen, compared with the newest reference, and its reader may see that from now on.
 * Throws AppError `not-allowed`, `not-found`, `bad-input` (also without a clarity grade), or `conflict`.
 */
export async function handInSecondReading(
  viewer: Viewer,
  input: z.input<typeof ReadingInputSchema>,
): Promise<void> {
  requireRole(viewer, "write-reading");
  const given = parseInput(ReadingInputSchema, input);
  await runInTransaction(async (transaction) => {
    const row = await requireOpenReading(transaction, viewer, given);
    if (given.plot.grades.clarity === undefined) {
      throw new AppError("bad-input", "A second reading needs a clarity grade before it is handed in.", [
        { path: "plot.grades.clarity", message: "is missing" },
      ]);
    }
    const [latest] = row.stone.references;
    if (latest === undefined) throw new Error("a second reading of a stone without a reference");
    const reference = parseColumn(ReferenceSchema, latest.body, "Reference.body");
    const { figures } = compareReadings(reference, given.plot, readReadingGround(row.stone));
    await transaction.secondReading.update({
      where: { id: row.id },
      data: {
        state: "handed-in",
        plot: toColumn(ReadingPlotSchema, given.plot),
        revision: row.revision + 1,
        handedInAt: new Date(),
        againstVersion: latest.version,
        figures: toColumn(ReadingFiguresSchema, figures),
      },
    });
    await writeTrail(transaction, viewer, {
      action: "hand-in-second-reading",
      subjectKind: "stone",
      subjectId: row.stoneId,
      detail: `against version ${latest.version}`,
    });
  });
}
