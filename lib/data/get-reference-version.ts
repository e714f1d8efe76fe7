import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { requireUnblinded } from "@/lib/data/store/find-open-reading";
import { parseColumn } from "@/lib/data/store/parse-column";
import { type Reference, ReferenceSchema } from "@/lib/plot/stone";

/** One version of a stone's reference, from 1. Throws AppError `not-found` or `not-allowed`, the latter also to a second reader. */
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
  const { body } = requireAccess(viewer, "read-trays", found);
  await requireUnblinded(viewer, [stoneId]);
  return parseColumn(ReferenceSchema, body, "Reference.body");
}
