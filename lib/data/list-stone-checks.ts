import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { listBlindStones } from "@/lib/data/store/find-open-reading";
import { parseColumn } from "@/lib/data/store/parse-column";
import { type StoneCheckRow, StoneCheckRowSchema } from "@/lib/plot/staff-view";
import { StoneEvidenceSchema, StoneVerdictSchema } from "@/lib/plot/stone-check";

/** Older ones are kept and not listed. */
const MOST_LISTED = 50;

/**
 * The last hand-in checks of a tray, newest first. Staff: they tell of references, so that none says anything while the viewer is
 * reading a stone of the tray blind. Throws AppError `not-found`.
 */
export async function listStoneChecks(viewer: Viewer, trayId: string): Promise<StoneCheckRow[]> {
  requireRole(viewer, "check-stone");
  const database = getDatabase();
  requireAccess(viewer, "check-stone", await database.tray.findUnique({ where: { id: trayId } }));
  const rows = await database.stoneCheck.findMany({
    where: { trayId },
    orderBy: { madeAt: "desc" },
    take: MOST_LISTED,
    include: {
      stone: { select: { label: true } },
      by: { select: { name: true } },
      settledBy: { select: { name: true } },
    },
  });
  const blind = await listBlindStones(viewer);
  const stones = await database.stone.findMany({ where: { trayId }, select: { id: true } });
  const isKeptBack = stones.some(({ id }) => blind.has(id));
  return rows.map((row) => {
    const evidence = parseColumn(StoneEvidenceSchema, row.evidence, "StoneCheck.evidence");
    const verdict =
      row.verdict === null || isKeptBack
        ? null
        : parseColumn(StoneVerdictSchema, row.verdict, "StoneCheck.verdict");
    return StoneCheckRowSchema.parse({
      checkId: row.id,
      stoneId: row.stoneId,
      label: row.stone?.label ?? null,
      byName: row.by.name,
      madeAt: row.madeAt.toISOString(),
      features: evidence.marks.length,
      weightCt: evidence.weightCt,
      verdict,
      isKeptBack,
      outcome: verdict?.outcome ?? null,
      certainty: verdict?.certainty ?? null,
      settledBy: row.settledBy?.name ?? null,
    });
  });
}
