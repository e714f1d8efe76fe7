import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { findExercise } from "@/lib/data/store/find-exercise";
import { isOvertakenNow, RESCORE_PARTS, type RescoreWithParts } from "@/lib/data/store/find-rescore";
import { getRubric } from "@/lib/data/store/get-rubric";
import { listRescoreChanges, type RescoreChange } from "@/lib/data/store/list-rescore-changes";
import { countOlder, listScored, toGroundNow } from "@/lib/data/store/list-scored";
import { parseColumn } from "@/lib/data/store/parse-column";
import { compareChanges, RescoreSummarySchema, summariseRescore } from "@/lib/plot/rescore";
import { type RescoreRow, type RescoreView, RescoreViewSchema } from "@/lib/plot/rescore-view";

/** Whose result on which stone each change is; those whose points stay left out, the biggest first. */
async function listRows(changes: readonly RescoreChange[], exerciseId: string): Promise<RescoreRow[]> {
  const sittings = await getDatabase().sitting.findMany({
    where: { exerciseStone: { exerciseId }, handIn: { isNot: null } },
    select: {
      id: true,
      attempt: true,
      student: { select: { name: true } },
      exerciseStone: { select: { stone: { select: { label: true } } } },
      handIn: { select: { id: true } },
      releases: { where: { withdrawnAt: null }, select: { id: true } },
    },
  });
  const byHandIn = new Map(sittings.map((one) => [one.handIn?.id, one]));
  return changes
    .filter(({ before, after }) => before !== after)
    .toSorted(compareChanges)
    .flatMap(({ handInId, before, after }) => {
      const sitting = byHandIn.get(handInId);
      if (sitting === undefined) return [];
      return {
        sittingId: sitting.id,
        studentName: sitting.student.name,
        stoneLabel: sitting.exerciseStone.stone.label,
        attempt: sitting.attempt,
        released: sitting.releases.length > 0,
        before: before / 100,
        after: after / 100,
      };
    });
}

async function toJob(row: RescoreWithParts) {
  const isReady = row.state === "ready";
  const changes = isReady ? await listRescoreChanges(getDatabase(), row.id) : [];
  const kept =
    row.summary === null ? null : parseColumn(RescoreSummarySchema, row.summary, "Rescore.summary");
  return {
    rescoreId: row.id,
    state: row.state,
    total: row.total,
    done: row.done,
    failed: row.failed,
    startedAt: row.startedAt.toISOString(),
    startedByName: row.startedBy.name,
    endedAt: row.endedAt?.toISOString() ?? null,
    endedByName: row.endedBy?.name ?? null,
    overtaken: isOvertakenNow(row),
    rows: await listRows(changes, row.exerciseId),
    summary: isReady ? summariseRescore(changes) : kept,
  };
}

/**
 * What a rescore of an exercise would change: how many results are older than the rubric and references in force, and the
 * rescore that is under way, waits or was the last. Throws AppError `not-found` or `not-allowed`.
 */
export async function getRescore(viewer: Viewer, exerciseId: string): Promise<RescoreView> {
  requireRole(viewer, "rescore-exercise");
  const database = getDatabase();
  const { row } = requireAccess(viewer, "rescore-exercise", await findExercise(database, exerciseId));
  const last = await database.rescore.findFirst({
    where: { exerciseId },
    orderBy: { startedAt: "desc" },
    include: RESCORE_PARTS,
  });
  return RescoreViewSchema.parse({
    exerciseId,
    exerciseTitle: row.title,
    rubricVersion: getRubric(row.rubrics).row.version,
    older: countOlder(await listScored(database, exerciseId, toGroundNow(row))),
    job: last === null ? null : await toJob(last),
  });
}
