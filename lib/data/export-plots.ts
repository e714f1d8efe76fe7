import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { findExercise } from "@/lib/data/store/find-exercise";
import { parseColumn } from "@/lib/data/store/parse-column";
import { PLOTS_FORMAT, PlotSchema, type PlotsFile, PlotsFileSchema } from "@/lib/plot/plots-file";

/**
 * All plots that were handed in for an exercise, by sign-in name and then in the order of the stones; those of a
 * stone that has no reference yet are left out, as the stone is from the set. Throws AppError `not-found`.
 */
export async function exportPlots(viewer: Viewer, exerciseId: string): Promise<PlotsFile> {
  requireRole(viewer, "review-exercise");
  const database = getDatabase();
  requireAccess(viewer, "review-exercise", await findExercise(database, exerciseId));
  const handIns = await database.handIn.findMany({
    where: { sitting: { exerciseStone: { exerciseId, stone: { references: { some: {} } } } } },
    orderBy: [
      { sitting: { student: { login: "asc" } } },
      { sitting: { exerciseStone: { position: "asc" } } },
      { sitting: { attempt: "asc" } },
    ],
    include: {
      sitting: {
        select: {
          student: { select: { login: true } },
          exerciseStone: { select: { stone: { select: { label: true } } } },
        },
      },
    },
  });
  return PlotsFileSchema.parse({
    format: PLOTS_FORMAT,
    version: 1,
    plots: handIns.map(({ plot, sitting }) => ({
      stone: sitting.exerciseStone.stone.label,
      by: sitting.student.login,
      ...parseColumn(PlotSchema, plot, "HandIn.plot"),
    })),
  });
}
