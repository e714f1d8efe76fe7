import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { parseColumn } from "@/lib/data/store/parse-column";
import { type Reference, ReferenceSchema } from "@/lib/plot/stone";

/** One version of a stone's reference, from 1. Throws AppError `not-found` or `not-allowed`. */
export async function getReferenceVersion(
  viewer: Viewer,
  stoneId: string,
  version: number,
): Promise<Reference> {
  requireRole(viewer, "read-trays");
  const row = await getDatabase().reference.findUnique({
    where: { stoneId_version: { stoneId, version } },
    include: { stone: { select: { tray: { select: { ownerId: true } } } } },
  });
  const found = row === null ? null : { body: row.body, ownerId: row.stone.tray.ownerId };
  return parseColumn(ReferenceSchema, requireAccess(viewer, "read-trays", found).body, "Reference.body");
}
