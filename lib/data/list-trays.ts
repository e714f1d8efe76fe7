import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { type TrayRow, TrayRowSchema } from "@/lib/plot/staff-view";

/** All trays of the program, by name, each with how many of its stones have a reference. */
export async function listTrays(viewer: Viewer): Promise<TrayRow[]> {
  requireRole(viewer, "read-trays");
  const trays = await getDatabase().tray.findMany({
    orderBy: [{ name: "asc" }, { createdAt: "asc" }],
    include: { stones: { select: { _count: { select: { references: true } } } } },
  });
  return trays.map((tray) =>
    TrayRowSchema.parse({
      trayId: tray.id,
      name: tray.name,
      notes: tray.notes,
      stoneCount: tray.stones.length,
      withReference: tray.stones.filter(({ _count }) => _count.references > 0).length,
    }),
  );
}
