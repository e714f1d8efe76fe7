import { refuseAsNotFound, requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { requireUnblinded } from "@/lib/data/store/find-open-reading";
import { findOwnLabel } from "@/lib/data/store/find-own-label";
import { findSitting, type SittingRow } from "@/lib/data/store/find-sitting";
import { listCommentViews, listOverruleViews } from "@/lib/data/store/list-review-words";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toStoneCard } from "@/lib/data/store/to-stone-card";
import { toTermsView } from "@/lib/data/store/to-terms-view";
import type { DebriefNote } from "@/lib/plot/bench-note";
import { ExerciseRulesSchema } from "@/lib/plot/exercise-rules";
import { ExerciseTermsSchema } from "@/lib/plot/exercise-terms";
import { PlotSchema } from "@/lib/plot/plots-file";
import { RubricSchema } from "@/lib/plot/rubric";
import { ScoreDetailSchema, type ScoredPlot, ScoreResultSchema } from "@/lib/plot/score-result";
import { SittingEventSchema } from "@/lib/plot/sitting-event";
import { ReferenceSchema } from "@/lib/plot/stone";
import { type DebriefView, DebriefViewSchema, PreparedSchema } from "@/lib/plot/student-view";

/** Where the sitting was held and what it was held against. */
function toSetting(row: SittingRow, label: string) {
  const { exercise, stone } = row.exerciseStone;
  return {
    sittingId: row.id,
    exerciseId: exercise.id,
    exerciseTitle: exercise.title,
    studentName: row.student.name,
    stone: { ...toStoneCard(stone), label },
    ...toTermsView(parseColumn(ExerciseTermsSchema, exercise.terms, "Exercise.terms")),
    dotting: parseColumn(ExerciseRulesSchema, exercise.rules, "Exercise.rules").dotting,
    openedAt: row.openedAt.toISOString(),
    releasedAt: row.releases[0]?.releasedAt.toISOString() ?? null,
  };
}

/**
 * What a student is told of the scoring, the stone under the name that they know it by: all but which other stone the plot would fit, as that stone's debrief need
 * not be released.
 */
function toStudentScore({ result: scored, detail: told }: ScoredPlot, label: string): ScoredPlot {
  const { suspectStone } = scored;
  const result = { ...scored, stone: label };
  const detail = { ...told, overrules: told.overrules.filter(({ applies }) => applies) };
  if (suspectStone === null) return { result, detail };
  const practise = detail.practise.filter((sentence) => !sentence.includes(`stone ${suspectStone}`));
  return { result: { ...result, suspectStone: null }, detail: { ...detail, practise } };
}

async function listEvents(sittingId: string) {
  const rows = await getDatabase().sittingEvent.findMany({ where: { sittingId }, orderBy: { seq: "asc" } });
  return rows.map(({ body }) => parseColumn(SittingEventSchema, body, "SittingEvent.body"));
}

async function listNotes(sittingId: string): Promise<DebriefNote[]> {
  const rows = await getDatabase().benchNote.findMany({ where: { sittingId }, orderBy: { sentAt: "asc" } });
  return rows.map(({ text, sentAt, seenAt }) => ({
    text,
    sentAt: sentAt.toISOString(),
    seenAt: seenAt?.toISOString() ?? null,
  }));
}

/** What staff ruled and said. A student is told of the rulings that apply. */
async function readReview(
  viewer: Viewer,
  sittingId: string,
  { detail }: ScoredPlot,
): Promise<Pick<DebriefView, "overrules" | "comments">> {
  const overrules = await listOverruleViews(getDatabase(), sittingId, detail.overrules);
  const comments = await listCommentViews(getDatabase(), sittingId);
  return {
    overrules: viewer.role === "student" ? overrules.filter(({ applies }) => applies) : overrules,
    comments: comments.map(({ authorId: _author, ...comment }) => comment),
  };
}

/**
 * The comparison of a plot with its reference: for its student once it is released, for staff once it is scored.
 * Throws AppError `not-found`, also for a sitting that is not scored yet.
 */
export async function getDebrief(viewer: Viewer, sittingId: string): Promise<DebriefView> {
  requireRole(viewer, "read-debrief");
  const { row } = requireAccess(viewer, "read-debrief", await findSitting(getDatabase(), sittingId));
  await requireUnblinded(viewer, [row.exerciseStone.stone.id]);
  const { handIn } = row;
  const current = handIn?.results[0];
  if (handIn === null || current === undefined) throw refuseAsNotFound();
  const scored = {
    result: parseColumn(ScoreResultSchema, current.result, "Result.result"),
    detail: parseColumn(ScoreDetailSchema, current.detail, "Result.detail"),
  };
  const rubric = parseColumn(RubricSchema, current.rubricVersion.body, "RubricVersion.body");
  const label =
    viewer.role === "student"
      ? await findOwnLabel(getDatabase(), row.exerciseStone, row.studentId)
      : row.exerciseStone.stone.label;
  return DebriefViewSchema.parse({
    ...toSetting(row, label),
    handedInAt: handIn.handedInAt.toISOString(),
    timedOut: handIn.timedOut,
    plot: parseColumn(PlotSchema, handIn.plot, "HandIn.plot"),
    prepared: parseColumn(PreparedSchema, handIn.prepared, "HandIn.prepared"),
    reference: parseColumn(ReferenceSchema, current.reference.body, "Reference.body"),
    referenceVersion: current.reference.version,
    rubricVersion: current.rubricVersion.version,
    near: rubric.near,
    far: rubric.far,
    ...(viewer.role === "student" ? toStudentScore(scored, label) : scored),
    events: await listEvents(row.id),
    notes: await listNotes(row.id),
    ...(await readReview(viewer, row.id, scored)),
  });
}
