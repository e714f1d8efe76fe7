import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import type { StoneEvidence } from "@/lib/agreement/stone-evidence";
import { getDatabase } from "@/lib/data/store/database";
import { requireUnblinded } from "@/lib/data/store/find-open-reading";
import { findStone } from "@/lib/data/store/find-stone";
import { readStoneEvidence } from "@/lib/workflows/evidence/read-stone-evidence";

/**
 * What students' plots say of a stone, over every section and exercise, without a name. Throws AppError `not-found` or
 * `not-allowed`, the latter also to a second reader who has not handed in yet.
 */
export async function getStoneEvidence(viewer: Viewer, stoneId: string): Promise<StoneEvidence> {
  requireRole(viewer, "read-trays");
  const { row } = requireAccess(viewer, "read-trays", await findStone(getDatabase(), stoneId));
  await requireUnblinded(viewer, [stoneId]);
  return readStoneEvidence(row);
}
