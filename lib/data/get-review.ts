import { can } from "@/lib/access/can";
import { refuseAsNotFound, requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDebrief } from "@/lib/data/get-debrief";
import { getDatabase } from "@/lib/data/store/database";
import { findSitting, type SittingRow } from "@/lib/data/store/find-sitting";
import { findStone } from "@/lib/data/store/find-stone";
import { listAttempts } from "@/lib/data/store/list-attempts";
import { parseColumn } from "@/lib/data/store/parse-column";
import { getGradeWorth } from "@/lib/plot/get-grade-worth";
import { RulingSchema } from "@/lib/plot/overrule";
import { type ReviewView, ReviewViewSchema } from "@/lib/plot/review-view";
import { RubricSchema } from "@/lib/plot/rubric";
import type { DebriefView } from "@/lib/plot/student-view";

const LOCKED =
  "The stone was changed after this was scored: rescore the exercise, then it can be overruled again.";

async function listEnded(sittingId: string): Promise<ReviewView["ended"]> {
  const by = { select: { name: true } };
  const rows = await getDatabase().overrule.findMany({
    where: { sittingId, NOT: { endedAt: null } },
    orderBy: [{ endedAt: "desc" }, { revision: "desc" }],
    include: { author: by, endedBy: by },
  });
  return rows.map(({ id, ruling, reason, author, madeAt, endedBy, endedAt }) => ({
    overruleId: id,
    ruling: parseColumn(RulingSchema, ruling, "Overrule.ruling"),
    reason,
    byName: author.name,
    madeAt: madeAt.toISOString(),
    endedBy: endedBy?.name ?? "",
    endedAt: (endedAt ?? madeAt).toISOString(),
  }));
}

async function toStone(viewer: Viewer, { exerciseStone }: SittingRow): Promise<ReviewView["stone"]> {
  const found = await findStone(getDatabase(), exerciseStone.stone.id);
  if (found === null) throw refuseAsNotFound();
  return {
    stoneId: found.row.id,
    trayId: found.row.trayId,
    referenceVersion: found.row.references[0]?.version ?? 0,
    mayEdit: can(viewer, "edit-tray", found),
  };
}

function listGradeWorth({ handIn }: SittingRow, { reference }: DebriefView): ReviewView["gradeWorth"] {
  const body = handIn?.results[0]?.rubricVersion.body;
  const rubric = parseColumn(RubricSchema, body, "RubricVersion.body");
  return [...getGradeWorth(reference.grades, rubric)].map(([property, points]) => ({ property, points }));
}

/**
 * A scored hand-in for review: its debrief, with overrules and comments whether it is released or not, and what a change of
 * them goes by. Throws AppError `not-allowed`, `not-found` (also while it is not scored) or `reading-blind`.
 */
export async function getReview(viewer: Viewer, sittingId: string): Promise<ReviewView> {
  requireRole(viewer, "review-sitting");
  const database = getDatabase();
  const { row } = requireAccess(viewer, "review-sitting", await findSitting(database, sittingId));
  const debrief = await getDebrief(viewer, sittingId);
  const own = await database.reviewComment.findMany({
    where: { sittingId, authorId: viewer.userId, deletedAt: null },
    select: { id: true },
  });
  const isSameBody = row.handIn?.results[0]?.stoneRevision === row.exerciseStone.stone.revision;
  return ReviewViewSchema.parse({
    debrief,
    revision: row.reviewRevision,
    state: row.releases.length > 0 ? "released" : "scored",
    attempts: await listAttempts(viewer, row),
    ownComments: own.map(({ id }) => id),
    ended: await listEnded(sittingId),
    stone: await toStone(viewer, row),
    gradeWorth: listGradeWorth(row, debrief),
    locked: isSameBody ? null : LOCKED,
  });
}
