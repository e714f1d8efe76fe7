import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { getDatabase } from "@/lib/data/store/database";
import { whereOwnPlaces } from "@/lib/data/store/find-own-label";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toStoneCard } from "@/lib/data/store/to-stone-card";
import { toTermsView } from "@/lib/data/store/to-terms-view";
import { arrangeOwnPlaces } from "@/lib/plot/arrange-own-places";
import { ExerciseRulesSchema } from "@/lib/plot/exercise-rules";
import { ExerciseTermsSchema } from "@/lib/plot/exercise-terms";
import { findStoneOpening } from "@/lib/plot/find-stone-opening";
import { type WorksheetsView, WorksheetsViewSchema } from "@/lib/plot/student-view";
import { toExercisePhase } from "@/lib/plot/to-exercise-phase";
import { toOwnDates } from "@/lib/plot/to-own-dates";

/**
 * What blank worksheets of an exercise say of its stones: to staff who may review it, and to a student of its section while it is open,
 * of the stones that have opened.
 * Throws AppError `not-found`, or `closed` to a student before it opens and after it closed.
 */
export async function getWorksheets(viewer: Viewer, exerciseId: string): Promise<WorksheetsView> {
  requireRole(viewer, "read-worksheet");
  const exercise = await getDatabase().exercise.findUnique({
    where: { id: exerciseId },
    include: {
      section: { include: { instructors: true, enrolments: true } },
      allowances: { where: { studentId: viewer.userId } },
      stones: {
        where: viewer.role === "student" ? whereOwnPlaces(viewer.userId) : { isRetake: false },
        orderBy: { position: "asc" },
        include: { stone: true },
      },
    },
  });
  const resource =
    exercise === null
      ? null
      : {
          row: exercise,
          instructorIds: exercise.section.instructors.map(({ instructorId }) => instructorId),
          studentIds: exercise.section.enrolments.map(({ studentId }) => studentId),
        };
  const { row } = requireAccess(viewer, "read-worksheet", resource);
  const now = new Date();
  const phase = toExercisePhase(toOwnDates(row, row.allowances[0]), now);
  if (viewer.role === "student" && (phase === "ahead" || phase === "closed")) {
    throw new AppError("closed", "Worksheets can be had while the exercise is open.");
  }
  const rules = parseColumn(ExerciseRulesSchema, row.rules, "Exercise.rules");
  const areLabelsHidden = rules.areLabelsHidden && viewer.role === "student";
  const arranged = arrangeOwnPlaces(row.stones, areLabelsHidden, viewer.userId);
  return WorksheetsViewSchema.parse({
    title: `${row.title}, ${row.section.name}`,
    stones: arranged
      .filter(({ place }) => viewer.role !== "student" || findStoneOpening(place, now) === null)
      .map(({ place, label }) => ({ ...toStoneCard(place.stone), label })),
    scales: toTermsView(parseColumn(ExerciseTermsSchema, row.terms, "Exercise.terms")).scales,
  });
}
