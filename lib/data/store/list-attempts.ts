import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { listBlindStones } from "@/lib/data/store/find-open-reading";
import type { SittingRow } from "@/lib/data/store/find-sitting";
import { toCellState } from "@/lib/data/store/to-review-cell";
import type { ReviewView } from "@/lib/plot/review-view";

/** The stones of the exercise that count in one place for a student: the one that is set, and those of retakes of it. */
async function listPlaceStones({
  studentId,
  exerciseStone: { id, exerciseId },
}: SittingRow): Promise<string[]> {
  const retakes = await getDatabase().retake.findMany({
    where: { studentId, replaces: { exerciseId } },
    select: { exerciseStoneId: true, replacesId: true },
  });
  const place = retakes.find(({ exerciseStoneId }) => exerciseStoneId === id)?.replacesId ?? id;
  const own = retakes.flatMap((one) => (one.replacesId === place ? [one.exerciseStoneId] : []));
  return [...new Set([place, ...own])];
}

/** All attempts of a sitting's student in its place of the exercise, in the order of the review grid. */
export async function listAttempts(viewer: Viewer, sitting: SittingRow): Promise<ReviewView["attempts"]> {
  const rows = await getDatabase().sitting.findMany({
    where: { studentId: sitting.studentId, exerciseStoneId: { in: await listPlaceStones(sitting) } },
    orderBy: [{ openedAt: "asc" }, { attempt: "asc" }],
    select: {
      id: true,
      exerciseStone: { select: { stone: { select: { id: true, label: true } } } },
      handIn: { select: { results: { where: { isCurrent: true }, select: { totalHundredths: true } } } },
      releases: { where: { withdrawnAt: null }, select: { id: true } },
    },
  });
  const blind = await listBlindStones(viewer);
  return rows.map((one) => {
    const { stone } = one.exerciseStone;
    const hundredths = blind.has(stone.id) ? undefined : one.handIn?.results[0]?.totalHundredths;
    return {
      sittingId: one.id,
      label: stone.label,
      state: toCellState(one),
      points: hundredths === undefined ? null : hundredths / 100,
    };
  });
}
