import { refuseAsNotFound, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { findStoneByCode } from "@/lib/data/store/find-stone-by-code";
import { HAND_OUT_PARTS, toHandOutView } from "@/lib/data/store/to-hand-out-view";
import { type ScannedStone, ScannedStoneSchema } from "@/lib/plot/hand-out";
import { toStoneCode } from "@/lib/plot/stone-code";

/** The stone of a label, from its address or its code, with where it is. Staff. Throws AppError `not-found`. */
export async function getScannedStone(viewer: Viewer, text: string): Promise<ScannedStone> {
  requireRole(viewer, "hand-out-stone");
  const database = getDatabase();
  const stoneId = await findStoneByCode(database, text);
  if (stoneId === null) throw refuseAsNotFound();
  const stone = await database.stone.findUniqueOrThrow({
    where: { id: stoneId },
    include: {
      tray: { select: { name: true } },
      handOuts: { where: { returnedAt: null }, include: HAND_OUT_PARTS },
    },
  });
  const [out] = stone.handOuts;
  return ScannedStoneSchema.parse({
    stoneId,
    code: toStoneCode(stoneId),
    label: stone.label,
    position: stone.position,
    trayId: stone.trayId,
    trayName: stone.tray.name,
    out: out === undefined ? null : toHandOutView(out, new Date()),
  });
}
