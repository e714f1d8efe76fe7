import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { runInTransaction } from "@/lib/data/store/database";
import { findSitting } from "@/lib/data/store/find-sitting";
import { writeTrail } from "@/lib/data/store/write-trail";
import { parseInput } from "@/lib/plot/parse-input";
import { type SittingIds, SittingIdsSchema } from "@/lib/plot/sitting-ids";

/**
 * Takes debriefs back from their students; one that is not open stays so. All or none. Throws AppError `not-allowed`
 * or `not-found`.
 */
export async function withdrawRelease(viewer: Viewer, input: SittingIds): Promise<{ withdrawn: number }> {
  requireRole(viewer, "release-debrief");
  const { sittingIds } = parseInput(SittingIdsSchema, input);
  return runInTransaction(async (transaction) => {
    const open: string[] = [];
    for (const sittingId of sittingIds) {
      const { row } = requireAccess(viewer, "release-debrief", await findSitting(transaction, sittingId));
      if (row.releases.length > 0) open.push(sittingId);
    }
    await transaction.release.updateMany({
      where: { sittingId: { in: open }, withdrawnAt: null },
      data: { withdrawnAt: new Date(), withdrawnById: viewer.userId },
    });
    const notes = open.map((subjectId) => ({
      action: "withdraw-release",
      subjectKind: "sitting",
      subjectId,
    }));
    await writeTrail(transaction, viewer, ...notes);
    return { withdrawn: open.length };
  });
}
