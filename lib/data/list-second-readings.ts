import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { findOpenReading } from "@/lib/data/store/find-open-reading";
import { findStone } from "@/lib/data/store/find-stone";
import { findWhyNoReading } from "@/lib/data/store/find-why-no-reading";
import { parseColumn } from "@/lib/data/store/parse-column";
import { ReadingFiguresSchema, type StoneReadings, StoneReadingsSchema } from "@/lib/plot/second-reading";

/**
 * The second readings of a stone, newest first, and whether the viewer may begin one. While the viewer's own is open, no
 * figures: they tell of the reference. Throws AppError `not-found`.
 */
export async function listSecondReadings(viewer: Viewer, stoneId: string): Promise<StoneReadings> {
  requireRole(viewer, "read-trays");
  const { row: stone } = requireAccess(viewer, "read-trays", await findStone(getDatabase(), stoneId));
  const openReadingId = await findOpenReading(viewer, stoneId);
  const rows = await getDatabase().secondReading.findMany({
    where: { stoneId },
    orderBy: { createdAt: "desc" },
    include: { reader: { select: { name: true } } },
  });
  return StoneReadingsSchema.parse({
    readings: rows.map((row) => ({
      readingId: row.id,
      readerName: row.reader.name,
      isOwn: row.readerId === viewer.userId,
      state: row.state,
      createdAt: row.createdAt.toISOString(),
      handedInAt: row.handedInAt?.toISOString() ?? null,
      figures:
        row.figures === null || openReadingId !== null
          ? null
          : parseColumn(ReadingFiguresSchema, row.figures, "SecondReading.figures"),
      settledVersion: row.settledVersion,
    })),
    openReadingId,
    whyNot: findWhyNoReading(
      viewer,
      stone,
      rows.some(({ readerId, state }) => readerId === viewer.userId && state !== "drawing"),
    ),
  });
}
