import { can } from "@/lib/access/can";
import { refuseAsNotFound, requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { requireUnblinded } from "@/lib/data/store/find-open-reading";
import { findReading, findReadingOfTray, type ReadingWithParts } from "@/lib/data/store/find-reading";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toTermsView } from "@/lib/data/store/to-terms-view";
import { TrayTermsSchema } from "@/lib/plot/exercise-terms";
import {
  type ClosedReading,
  ClosedReadingSchema,
  type OpenReading,
  OpenReadingSchema,
  ReadingPlotSchema,
} from "@/lib/plot/second-reading";
import { ReferenceSchema, StoneBodySchema } from "@/lib/plot/stone";
import { compareReadings } from "@/lib/workflows/reading/compare-readings";
import { readReadingGround } from "@/lib/workflows/reading/read-reading-ground";

function toHead(viewer: Viewer, row: ReadingWithParts) {
  return {
    readingId: row.id,
    stoneId: row.stoneId,
    trayId: row.stone.trayId,
    trayName: row.stone.tray.name,
    label: row.stone.label,
    readerName: row.reader.name,
    isOwn: row.readerId === viewer.userId,
    body: parseColumn(StoneBodySchema, row.stone.body, "Stone.body"),
    ...toTermsView(parseColumn(TrayTermsSchema, row.stone.tray.terms, "Tray.terms")),
    createdAt: row.createdAt.toISOString(),
  };
}

function toClosed(viewer: Viewer, row: ReadingWithParts, mayEdit: boolean): ClosedReading {
  const { references } = row.stone;
  const settledOn = row.state === "settled" ? (row.settledVersion ?? 1) - 1 : null;
  const against =
    settledOn === null ? references[0] : references.find(({ version }) => version === settledOn);
  if (against === undefined || row.handedInAt === null)
    throw new Error("a reading without what it was held against");
  const reference = parseColumn(ReferenceSchema, against.body, "Reference.body");
  const plot = parseColumn(ReadingPlotSchema, row.plot, "SecondReading.plot");
  return ClosedReadingSchema.parse({
    ...toHead(viewer, row),
    state: row.state,
    handedInAt: row.handedInAt.toISOString(),
    againstVersion: against.version,
    firstAuthorName: against.author.name,
    reference,
    comparison: compareReadings(reference, plot, readReadingGround(row.stone)),
    maySettle: mayEdit && row.state === "handed-in",
    settledVersion: row.settledVersion,
    settledByName: row.settledBy?.name ?? null,
    settledAt: row.settledAt?.toISOString() ?? null,
  });
}

/**
 * A second reading: while it is drawn, its reader alone has it, and nothing of the reference is read for it; once it is
 * handed in, staff see it beside the newest reference, or the one that it was settled on. Throws AppError `not-found` or
 * `not-allowed`.
 */
export async function getSecondReading(
  viewer: Viewer,
  readingId: string,
): Promise<OpenReading | ClosedReading> {
  requireRole(viewer, "read-trays");
  const { row } = requireAccess(viewer, "read-trays", await findReading(getDatabase(), readingId));
  if (row.state === "given-up") throw refuseAsNotFound();
  if (row.state !== "drawing") {
    await requireUnblinded(viewer, [row.stoneId]);
    const ofTray = await findReadingOfTray(getDatabase(), readingId);
    return toClosed(viewer, row, ofTray !== null && can(viewer, "edit-tray", ofTray));
  }
  if (!can(viewer, "write-reading", { ownerId: row.readerId })) throw refuseAsNotFound();
  return OpenReadingSchema.parse({
    ...toHead(viewer, row),
    state: row.state,
    revision: row.revision,
    plot: parseColumn(ReadingPlotSchema, row.plot, "SecondReading.plot"),
  });
}
