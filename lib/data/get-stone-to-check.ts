import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { findExerciseStone } from "@/lib/data/store/find-exercise-stone";
import { findOwnLabel } from "@/lib/data/store/find-own-label";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toStoneCard } from "@/lib/data/store/to-stone-card";
import { toTermsView } from "@/lib/data/store/to-terms-view";
import { ExerciseTermsSchema } from "@/lib/plot/exercise-terms";
import { type StoneToCheck, StoneToCheckSchema } from "@/lib/plot/student-view";

/** A stone that is set for a student, as they plot a few features of it for the check. Throws AppError `not-found`. */
export async function getStoneToCheck(viewer: Viewer, exerciseStoneId: string): Promise<StoneToCheck> {
  requireRole(viewer, "send-stone-check");
  const database = getDatabase();
  const found = await findExerciseStone(database, exerciseStoneId);
  const { row } = requireAccess(viewer, "send-stone-check", found);
  return StoneToCheckSchema.parse({
    exerciseStoneId: row.id,
    stone: { ...toStoneCard(row.stone), label: await findOwnLabel(database, row, viewer.userId) },
    characteristics: toTermsView(parseColumn(ExerciseTermsSchema, row.exercise.terms, "Exercise.terms"))
      .characteristics,
  });
}
