import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction } from "@/lib/data/store/database";
import { findSitting } from "@/lib/data/store/find-sitting";
import { writeTrail } from "@/lib/data/store/write-trail";
import { parseInput } from "@/lib/plot/parse-input";
import { type SittingIds, SittingIdsSchema } from "@/lib/plot/sitting-ids";

/**
 * Opens debriefs to their students; one that is open already stays so. All or none. Throws AppError `not-allowed`,
 * `not-found`, or `conflict` for a sitting that is not scored yet.
 */
export async function releaseDebriefs(viewer: Viewer, input: SittingIds): Promise<{ released: number }> {
  requireRole(viewer, "release-debrief");
  const { sittingIds } = parseInput(SittingIdsSchema, input);
  return runInTransaction(async (transaction) => {
    const fresh: string[] = [];
    for (const sittingId of sittingIds) {
      const { row } = requireAccess(viewer, "release-debrief", await findSitting(transaction, sittingId));
      if (row.handIn?.results[0] === undefined) {
        throw new AppError("conflict", "A stone that is not handed in and scored cannot be released.");
      }
      if (row.releases.length === 0) fresh.push(sittingId);
    }
    await transaction.release.createMany({
      data: fresh.map((sittingId) => ({ sittingId, releasedById: viewer.userId, releasedAt: new Date() })),
    });
    const notes = fresh.map((subjectId) => ({
      action: "release-debrief",
      subjectKind: "sitting",
      subjectId,
    }));
    await writeTrail(transaction, viewer, ...notes);
    return { released: fresh.length };
  });
}
