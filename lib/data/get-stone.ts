import { can } from "@/lib/access/can";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { findOpenReading } from "@/lib/data/store/find-open-reading";
import { findStone, type StoneWithParts } from "@/lib/data/store/find-stone";
import { parseColumn } from "@/lib/data/store/parse-column";
import { HAND_OUT_PARTS, toHandOutView } from "@/lib/data/store/to-hand-out-view";
import { toTermsView } from "@/lib/data/store/to-terms-view";
import { TrayTermsSchema } from "@/lib/plot/exercise-terms";
import { type StoneView, StoneViewSchema } from "@/lib/plot/staff-view";
import { ReferenceSchema, StoneBodySchema } from "@/lib/plot/stone";

/** Hand-outs that were taken back are told of as far back as this many. */
const PAST_HAND_OUTS = 10;

/** Where a stone is, where it was, and its photographs. */
async function readDesk(stoneId: string) {
  const database = getDatabase();
  const photos = await database.stonePhoto.findMany({
    where: { stoneId },
    orderBy: [{ position: "asc" }, { addedAt: "asc" }],
  });
  const rows = await database.handOut.findMany({
    where: { stoneId },
    orderBy: { handedOutAt: "desc" },
    take: PAST_HAND_OUTS + 1,
    include: HAND_OUT_PARTS,
  });
  const handOuts = rows.map((row) => toHandOutView(row, new Date()));
  return {
    photos: photos.map(({ id, caption, isShown, widthPx, heightPx }) => ({
      photoId: id,
      caption,
      isShown,
      widthPx,
      heightPx,
    })),
    out: handOuts.find(({ returnedAt }) => returnedAt === null) ?? null,
    handOuts: handOuts.filter(({ returnedAt }) => returnedAt !== null).slice(0, PAST_HAND_OUTS),
  };
}

/** Whose second reading a version was settled with, by version. */
async function listSettled(stoneId: string): Promise<ReadonlyMap<number, string>> {
  const rows = await getDatabase().secondReading.findMany({
    where: { stoneId, settledVersion: { not: null } },
    select: { settledVersion: true, reader: { select: { name: true } } },
  });
  return new Map(rows.map(({ settledVersion, reader }) => [settledVersion ?? 0, reader.name]));
}

function toVersion(row: StoneWithParts["references"][number], settled: ReadonlyMap<number, string>) {
  const reference = parseColumn(ReferenceSchema, row.body, "Reference.body");
  const readerName = settled.get(row.version);
  return {
    version: row.version,
    authorName: row.author.name,
    createdAt: row.createdAt.toISOString(),
    note:
      readerName === undefined ? row.note : `Settled with the second reading by ${readerName}: ${row.note}`,
    marks: reference.marks.length,
    clarity: reference.grades.clarity,
  };
}

/**
 * A stone with its latest reference and the list of versions, newest first; nothing of either to a second reader who has not
 * handed in. Throws AppError `not-found`.
 */
export async function getStone(viewer: Viewer, stoneId: string): Promise<StoneView> {
  requireRole(viewer, "read-trays");
  const found = requireAccess(viewer, "read-trays", await findStone(getDatabase(), stoneId));
  const { row } = found;
  const openReadingId = await findOpenReading(viewer, stoneId);
  const references = openReadingId === null ? row.references : [];
  const latest = references[0];
  const settled = await listSettled(stoneId);
  return StoneViewSchema.parse({
    stoneId: row.id,
    trayId: row.trayId,
    trayName: row.tray.name,
    label: row.label,
    position: row.position,
    body: parseColumn(StoneBodySchema, row.body, "Stone.body"),
    revision: row.revision,
    mayEdit: openReadingId === null && can(viewer, "edit-tray", found),
    openReadingId,
    reference: latest === undefined ? null : parseColumn(ReferenceSchema, latest.body, "Reference.body"),
    referenceVersion: latest?.version ?? 0,
    versions: references.map((one) => toVersion(one, settled)),
    ...(await readDesk(stoneId)),
    ...toTermsView(parseColumn(TrayTermsSchema, row.tray.terms, "Tray.terms")),
  });
}
