import type { ExerciseDraft } from "@/components/staff/exercise-draft";
import type { Fault } from "@/lib/base/app-error";

/** What every group of an exercise's fields is given. */
export interface ExerciseFieldsProps {
  draft: ExerciseDraft;
  faults: readonly Fault[];
  onChange: (part: Partial<ExerciseDraft>) => void;
}
