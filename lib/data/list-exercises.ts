import type { z } from "zod";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { listExerciseRows } from "@/lib/data/store/list-exercise-rows";
import { whereSectionInScope } from "@/lib/data/store/where-in-scope";
import { type ExerciseRow, ExerciseRowSchema } from "@/lib/plot/staff-view";

/** The exercises of the sections that the viewer may review, the latest due first. */
export async function listExercises(viewer: Viewer): Promise<ExerciseRow[]> {
  const section = whereSectionInScope(viewer, "review-exercise");
  const rows: z.input<typeof ExerciseRowSchema>[] = await listExerciseRows(getDatabase(), { section });
  return rows.map((row) => ExerciseRowSchema.parse(row));
}
