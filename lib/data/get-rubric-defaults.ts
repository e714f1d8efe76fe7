import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { findProgramSettings } from "@/lib/data/store/find-program-settings";
import type { Rubric } from "@/lib/plot/rubric";

/** The numbers that a new exercise starts with, for whoever may set one. Throws AppError `not-found` for a student. */
export async function getRubricDefaults(viewer: Viewer): Promise<Rubric> {
  requireRole(viewer, "set-exercise");
  return (await findProgramSettings(getDatabase())).rubric;
}
