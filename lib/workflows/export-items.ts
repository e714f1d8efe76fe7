import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { requireUnblinded } from "@/lib/data/store/find-open-reading";
import { findSection } from "@/lib/data/store/find-section";
import { parseColumn } from "@/lib/data/store/parse-column";
import type { ItemPlot } from "@/lib/exchange/write-items";
import { MarkOutcomeSchema } from "@/lib/plot/result-tally";
import { ensureTallySums } from "@/lib/workflows/tally/list-tally-sums";

/**
 * Every scored plot of a section with the reference marks that it has and lacks, by sign-in name and time; from tallies,
 * released or not. Throws AppError `not-found`, `reading-blind` or `not-allowed`.
 */
export async function exportItems(viewer: Viewer, sectionId: string): Promise<ItemPlot[]> {
  requireRole(viewer, "read-sections");
  const { row } = requireAccess(viewer, "read-sections", await findSection(getDatabase(), sectionId));
  await requireUnblinded(
    viewer,
    row.exercises.flatMap(({ stones }) => stones.map(({ stoneId }) => stoneId)),
  );
  const exerciseIds = row.exercises.map(({ id }) => id);
  await ensureTallySums(exerciseIds);
  const tallies = await getDatabase().resultTally.findMany({
    where: { exerciseId: { in: exerciseIds } },
    orderBy: [{ student: { login: "asc" } }, { handedInAt: "asc" }, { resultId: "asc" }],
    select: {
      attempt: true,
      handedInAt: true,
      totalHundredths: true,
      clarityGap: true,
      outcome: true,
      student: { select: { login: true, name: true } },
      exercise: { select: { title: true } },
      exerciseStone: { select: { stone: { select: { label: true } } } },
    },
  });
  return tallies.map(({ student, exercise, exerciseStone, totalHundredths, outcome, ...rest }) => ({
    ...rest,
    ...student,
    exerciseTitle: exercise.title,
    label: exerciseStone.stone.label,
    hundredths: totalHundredths,
    ...parseColumn(MarkOutcomeSchema, outcome, "ResultTally.outcome"),
  }));
}
