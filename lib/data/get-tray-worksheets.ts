import { refuseAsNotFound, requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toStoneCard } from "@/lib/data/store/to-stone-card";
import { toTermsView } from "@/lib/data/store/to-terms-view";
import { TrayTermsSchema } from "@/lib/plot/exercise-terms";
import { type WorksheetsView, WorksheetsViewSchema } from "@/lib/plot/student-view";

/** What blank worksheets say of a tray's stones. Staff. Throws AppError `not-found`, also for an empty tray, or `not-allowed`. */
export async function getTrayWorksheets(viewer: Viewer, trayId: string): Promise<WorksheetsView> {
  requireRole(viewer, "read-trays");
  const tray = await getDatabase().tray.findUnique({
    where: { id: trayId },
    include: { stones: { orderBy: { position: "asc" } } },
  });
  const found = requireAccess(viewer, "read-trays", tray);
  if (found.stones.length === 0) throw refuseAsNotFound();
  return WorksheetsViewSchema.parse({
    title: found.name,
    stones: found.stones.map(toStoneCard),
    scales: toTermsView(parseColumn(TrayTermsSchema, found.terms, "Tray.terms")).scales,
  });
}
