import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { listExerciseRows } from "@/lib/data/store/list-exercise-rows";
import { whereSectionInScope } from "@/lib/data/store/where-in-scope";
import { type Overview, OverviewSchema } from "@/lib/plot/staff-view";

/** What staff see first: the program's trays and stones in numbers, and the exercises that are theirs to review. */
export async function getOverview(viewer: Viewer): Promise<Overview> {
  requireRole(viewer, "read-overview");
  const section = whereSectionInScope(viewer, "review-exercise");
  const database = getDatabase();
  return OverviewSchema.parse({
    trays: await database.tray.count(),
    stones: await database.stone.count(),
    withoutReference: await database.stone.count({ where: { references: { none: {} } } }),
    exercises: await listExerciseRows(database, { section }),
  });
}
