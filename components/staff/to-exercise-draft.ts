import type { ExerciseDraft } from "@/components/staff/exercise-draft";
import type { ReviewGrid } from "@/lib/plot/staff-view";

/** The draft that reads back as this exercise. */
export function toExerciseDraft({
  exercise,
  notes,
  debriefsAt,
  rules,
  rubric,
  stones,
}: ReviewGrid): ExerciseDraft {
  return {
    sectionId: exercise.sectionId,
    title: exercise.title,
    notes,
    opensAt: exercise.opensAt,
    dueAt: exercise.dueAt,
    closesAt: exercise.closesAt ?? "",
    debriefsAt: debriefsAt ?? "",
    preparation: rules.preparation,
    schoolRules: rules.schoolRules,
    proofs: rules.proofs,
    areProofsRequired: rules.areProofsRequired,
    isDottingOn: rules.dotting.isOn,
    burstDots: rules.dotting.burstDots,
    burstGapS: rules.dotting.burstGapMs / 1000,
    minutesPerStone: rules.minutesPerStone ?? "",
    attempts: rules.attempts,
    isInOrder: rules.isInOrder,
    areLabelsHidden: rules.areLabelsHidden,
    orientation: rubric.orientation,
    stoneIds: stones.map(({ stoneId }) => stoneId),
    stoneOpenings: Object.fromEntries(stones.map(({ stoneId, opensAt }) => [stoneId, opensAt ?? ""])),
  };
}
