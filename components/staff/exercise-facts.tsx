import classes from "@/components/staff/exercise-facts.module.css";
import { EXERCISE_PHASE_WORDS } from "@/components/ui/state-words";
import { StatusBadge } from "@/components/ui/status-badge";
import { When } from "@/components/ui/when";
import type { ExerciseRow } from "@/lib/plot/staff-view";

/** One line on an exercise: its section, its state and its dates. */
export function ExerciseFacts({ exercise }: { exercise: ExerciseRow }) {
  const { tone, words } = EXERCISE_PHASE_WORDS[exercise.phase];
  return (
    <div className={classes.root}>
      <StatusBadge tone={tone}>{words}</StatusBadge>
      <span>{exercise.sectionName}</span>
      <span>
        opens <When iso={exercise.opensAt} />
      </span>
      <span>
        due <When iso={exercise.dueAt} />
      </span>
      {exercise.closesAt !== null && (
        <span>
          closes <When iso={exercise.closesAt} />
        </span>
      )}
    </div>
  );
}
