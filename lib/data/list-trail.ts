import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { type TrailRow, TrailRowSchema } from "@/lib/plot/staff-view";

/** Rows on a page of the trail. */
const PAGE_ROWS = 50;

/** A page of the trail, newest first; `page` counts from 1 and one past the end is empty. */
export async function listTrail(
  viewer: Viewer,
  { page }: { readonly page: number },
): Promise<{ rows: TrailRow[]; total: number }> {
  requireRole(viewer, "read-trail");
  const database = getDatabase();
  const skip = Math.max(0, Math.floor(page) - 1) * PAGE_ROWS;
  const entries = await database.trailEntry.findMany({ orderBy: { id: "desc" }, skip, take: PAGE_ROWS });
  const rows = entries.map((entry) =>
    TrailRowSchema.parse({
      at: entry.at.toISOString(),
      actorName: entry.actorName,
      action: entry.action,
      subjectKind: entry.subjectKind,
      subjectId: entry.subjectId,
      detail: entry.detail,
    }),
  );
  return { rows, total: await database.trailEntry.count() };
}
