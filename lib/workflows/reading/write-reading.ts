/** What saving and handing in a second reading have in common. */
import { z } from "zod";
import { requireAccess } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import type { Transaction } from "@/lib/data/store/database";
import { findReading, type ReadingWithParts } from "@/lib/data/store/find-reading";
import { findReferenceFaults, findSolid } from "@/lib/plot/find-plot-faults";
import { type ReadingPlot, ReadingPlotSchema } from "@/lib/plot/second-reading";
import { readReadingGround } from "@/lib/workflows/reading/read-reading-ground";

export const ReadingInputSchema = z.strictObject({
  readingId: z.string(),
  /** The revision that the work was begun on. */
  revision: z.int().min(1),
  plot: ReadingPlotSchema,
});
export type ReadingInput = z.output<typeof ReadingInputSchema>;

function requireFaultless(plot: ReadingPlot, row: ReadingWithParts): void {
  const { stone, terms } = readReadingGround(row.stone);
  const { solid } = findSolid(stone, "body");
  // A clarity that is not given yet is no fault of a drawing: any of the scale stands in for it.
  const clarity = plot.grades.clarity ?? terms.scales.clarity[0] ?? "";
  const faults = findReferenceFaults({ ...plot, grades: { ...plot.grades, clarity } }, solid, terms, "plot");
  if (faults.length > 0) throw new AppError("bad-input", "The plot was not saved.", faults);
}

/**
 * The reading, if it is the viewer's own, not handed in, and nobody else's tab has saved since. Throws AppError `not-found`,
 * `bad-input`, or `conflict`.
 */
export async function requireOpenReading(
  transaction: Transaction,
  viewer: Viewer,
  { readingId, revision, plot }: ReadingInput,
): Promise<ReadingWithParts> {
  const { row } = requireAccess(viewer, "write-reading", await findReading(transaction, readingId));
  if (row.state !== "drawing") throw new AppError("conflict", "This second reading is not open any more.");
  if (row.revision !== revision) {
    throw new AppError("conflict", "Another tab of yours saved this reading meanwhile; nothing was written.");
  }
  requireFaultless(plot, row);
  return row;
}
