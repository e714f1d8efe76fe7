import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { HAND_OUT_PARTS, toHandOutView } from "@/lib/data/store/to-hand-out-view";
import { type OutRow, OutRowSchema } from "@/lib/plot/hand-out";

/** Every stone that is out now, of every tray: overdue ones first, then the longest out. */
export async function listOut(viewer: Viewer): Promise<OutRow[]> {
  requireRole(viewer, "hand-out-stone");
  const rows = await getDatabase().handOut.findMany({
    where: { returnedAt: null },
    orderBy: [{ handedOutAt: "asc" }, { stone: { label: "asc" } }],
    include: { ...HAND_OUT_PARTS, stone: { include: { tray: { select: { name: true } } } } },
  });
  const now = new Date();
  return rows
    .map((row) =>
      OutRowSchema.parse({
        ...toHandOutView(row, now),
        stoneId: row.stoneId,
        label: row.stone.label,
        trayId: row.stone.trayId,
        trayName: row.stone.tray.name,
      }),
    )
    .sort((a, b) => Number(b.isOverdue) - Number(a.isOverdue));
}
