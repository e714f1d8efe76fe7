import "server-only";
import firstLook from "@/exercise-sets/first-look.json";
import gradeBoundaries from "@/exercise-sets/grade-boundaries.json";
import reflectionsAndGlints from "@/exercise-sets/reflections-and-glints.json";
import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { type ExerciseSet, ExerciseSetSchema } from "@/lib/plot/exercise-set";

/** The sets that come with the program, easiest first. */
const SHIPPED: readonly unknown[] = [firstLook, reflectionsAndGlints, gradeBoundaries];

/** The exercise sets that come with the program, whole, with their references: for staff alone. */
export function listLibrarySets(viewer: Viewer): ExerciseSet[] {
  requireRole(viewer, "make-tray");
  return SHIPPED.map((json) => ExerciseSetSchema.parse(json));
}
