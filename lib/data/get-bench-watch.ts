import type { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { findSitting } from "@/lib/data/store/find-sitting";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toStoneCard } from "@/lib/data/store/to-stone-card";
import { toTermsView } from "@/lib/data/store/to-terms-view";
import { ExerciseTermsSchema } from "@/lib/plot/exercise-terms";
import { SittingStateSchema } from "@/lib/plot/sitting-state";
import { BenchWatchSchema } from "@/lib/plot/staff-view";

/** A sitting's plot as staff may look on while it grows. Throws AppError `not-found` or `not-allowed`. */
export async function getBenchWatch(
  viewer: Viewer,
  sittingId: string,
): Promise<z.infer<typeof BenchWatchSchema>> {
  requireRole(viewer, "review-exercise");
  const { row } = requireAccess(viewer, "review-exercise", await findSitting(getDatabase(), sittingId));
  const { stone, exercise } = row.exerciseStone;
  return BenchWatchSchema.parse({
    sittingId: row.id,
    studentName: row.student.name,
    label: stone.label,
    stone: toStoneCard(stone),
    characteristics: toTermsView(parseColumn(ExerciseTermsSchema, exercise.terms, "Exercise.terms"))
      .characteristics,
    plot: parseColumn(SittingStateSchema, row.state, "Sitting.state").plot,
  });
}
