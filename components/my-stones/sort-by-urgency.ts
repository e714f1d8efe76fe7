/** The order in which a student reads the exercises. Pure. */
import type { ExercisePhase, MyExercise } from "@/lib/plot/student-view";

const RANK: Readonly<Record<ExercisePhase, number>> = { open: 0, late: 0, ahead: 1, closed: 2 };

/** What takes work now by its due date, then what opens next, then what is closed, the latest first. */
export function sortByUrgency(exercises: readonly MyExercise[]): MyExercise[] {
  const dueMs = ({ dueAt }: MyExercise) => Date.parse(dueAt);
  return [...exercises].sort((a, b) => {
    const byRank = RANK[a.phase] - RANK[b.phase];
    if (byRank !== 0) return byRank;
    return a.phase === "closed" ? dueMs(b) - dueMs(a) : dueMs(a) - dueMs(b);
  });
}
