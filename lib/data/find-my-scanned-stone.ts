import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { findStoneByCode } from "@/lib/data/store/find-stone-by-code";
import { whereSectionInScope } from "@/lib/data/store/where-in-scope";

/**
 * Where a student who scans a label goes: the exercise's own id of that stone, if it is set for them and open; null for
 * any other label, and for one that is none.
 */
export async function findMyScannedStone(viewer: Viewer, text: string): Promise<string | null> {
  requireRole(viewer, "send-stone-check");
  const database = getDatabase();
  const stoneId = await findStoneByCode(database, text);
  if (stoneId === null) return null;
  const row = await database.exerciseStone.findFirst({
    where: {
      stoneId,
      exercise: { opensAt: { lte: new Date() }, section: whereSectionInScope(viewer, "send-stone-check") },
    },
    orderBy: { exercise: { dueAt: "desc" } },
    select: { id: true },
  });
  return row?.id ?? null;
}
