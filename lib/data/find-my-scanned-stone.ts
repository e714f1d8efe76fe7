import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { whereOwnPlaces, whereStoneOpened } from "@/lib/data/store/find-own-label";
import { findStoneByCode } from "@/lib/data/store/find-stone-by-code";
import { parseColumn } from "@/lib/data/store/parse-column";
import { whereSectionInScope } from "@/lib/data/store/where-in-scope";
import { ExerciseRulesSchema } from "@/lib/plot/exercise-rules";

/**
 * Where a student who scans a label goes: the exercise's own id of that stone, if it is set for them and open; null for
 * any other label, for one that is none, and where the exercise hides labels.
 */
export async function findMyScannedStone(viewer: Viewer, text: string): Promise<string | null> {
  requireRole(viewer, "send-stone-check");
  const database = getDatabase();
  const stoneId = await findStoneByCode(database, text);
  if (stoneId === null) return null;
  const now = new Date();
  const rows = await database.exerciseStone.findMany({
    where: {
      stoneId,
      AND: [whereOwnPlaces(viewer.userId), whereStoneOpened(now)],
      exercise: { opensAt: { lte: now }, section: whereSectionInScope(viewer, "send-stone-check") },
    },
    orderBy: { exercise: { dueAt: "desc" } },
    select: { id: true, exercise: { select: { rules: true } } },
  });
  // Where labels are hidden, the label in hand must not lead to the stone's own number.
  const open = rows.find(
    ({ exercise }) => !parseColumn(ExerciseRulesSchema, exercise.rules, "Exercise.rules").areLabelsHidden,
  );
  return open?.id ?? null;
}
