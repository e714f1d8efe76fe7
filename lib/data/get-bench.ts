import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { findOwnLabel } from "@/lib/data/store/find-own-label";
import { findSitting, toSittingDates } from "@/lib/data/store/find-sitting";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toStoneCard } from "@/lib/data/store/to-stone-card";
import { toTermsView } from "@/lib/data/store/to-terms-view";
import { ExerciseRulesSchema } from "@/lib/plot/exercise-rules";
import { ExerciseTermsSchema } from "@/lib/plot/exercise-terms";
import { SittingStateSchema } from "@/lib/plot/sitting-state";
import { type BenchView, BenchViewSchema } from "@/lib/plot/student-view";

/** The latest moment in a log, ms since the opening; 0 for an empty one. */
async function getLastAtMs(sittingId: string): Promise<number> {
  const { _max } = await getDatabase().sittingEvent.aggregate({ where: { sittingId }, _max: { atMs: true } });
  return _max.atMs ?? 0;
}

/** A student's own sitting as the bench opens it, handed in or not. Throws AppError `not-found`. */
export async function getBench(viewer: Viewer, sittingId: string): Promise<BenchView> {
  requireRole(viewer, "read-bench");
  const database = getDatabase();
  const found = await findSitting(database, sittingId);
  const { row } = requireAccess(viewer, "read-bench", found);
  const { exercise, stone } = row.exerciseStone;
  const dates = toSittingDates(row);
  const state = parseColumn(SittingStateSchema, row.state, "Sitting.state");
  return BenchViewSchema.parse({
    sittingId: row.id,
    exerciseId: exercise.id,
    exerciseTitle: exercise.title,
    dueAt: dates.dueAt.toISOString(),
    closesAt: dates.closesAt?.toISOString() ?? null,
    debriefsAt: exercise.debriefsAt?.toISOString() ?? null,
    rules: parseColumn(ExerciseRulesSchema, exercise.rules, "Exercise.rules"),
    stone: { ...toStoneCard(stone), label: await findOwnLabel(database, row.exerciseStone, row.studentId) },
    ...toTermsView(parseColumn(ExerciseTermsSchema, exercise.terms, "Exercise.terms")),
    openedAt: row.openedAt.toISOString(),
    endsAt: row.endsAt?.toISOString() ?? null,
    readAt: new Date().toISOString(),
    plot: state.plot,
    prepared: state.prepared,
    lastSeq: state.lastSeq,
    lastAtMs: await getLastAtMs(row.id),
    writerId: row.writerId,
    handedInAt: row.handIn?.handedInAt.toISOString() ?? null,
    timedOut: row.handIn?.timedOut ?? false,
  });
}
