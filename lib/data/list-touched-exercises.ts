import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { findStone } from "@/lib/data/store/find-stone";
import { whereSectionInScope } from "@/lib/data/store/where-in-scope";
import { type TouchedExercise, TouchedExerciseSchema } from "@/lib/plot/rescore-view";

/**
 * The exercises that a stone is set in, of the sections whose results the viewer may rescore, with how many of the
 * results on it are older than its newest reference or body; the latest due first. Throws AppError `not-found`.
 */
export async function listTouchedExercises(viewer: Viewer, stoneId: string): Promise<TouchedExercise[]> {
  requireRole(viewer, "read-trays");
  const database = getDatabase();
  const { row: stone } = requireAccess(viewer, "read-trays", await findStone(database, stoneId));
  const [latest] = stone.references;
  const exercises = await database.exercise.findMany({
    where: { stones: { some: { stoneId } }, section: whereSectionInScope(viewer, "rescore-exercise") },
    orderBy: [{ dueAt: "desc" }, { title: "asc" }],
    select: { id: true, title: true, section: { select: { name: true } } },
  });
  const results = await database.result.findMany({
    where: { isCurrent: true, handIn: { sitting: { exerciseStone: { stoneId } } } },
    select: {
      referenceId: true,
      stoneRevision: true,
      handIn: { select: { sitting: { select: { exerciseStone: { select: { exerciseId: true } } } } } },
    },
  });
  return exercises.map(({ id, title, section }) => {
    const own = results.filter(({ handIn }) => handIn.sitting.exerciseStone.exerciseId === id);
    const older = own.filter((one) => one.referenceId !== latest?.id || one.stoneRevision !== stone.revision);
    return TouchedExerciseSchema.parse({
      exerciseId: id,
      title,
      sectionName: section.name,
      results: own.length,
      older: older.length,
    });
  });
}
