/** Each state of a stone, an exercise and a cell of the review grid: its words and the sign it is shown with. */
import type { StatusTone } from "@/components/ui/status-badge";
import type { ReviewCell } from "@/lib/plot/staff-view";
import type { ExercisePhase, StoneState } from "@/lib/plot/student-view";

export interface StateWords {
  readonly tone: StatusTone;
  readonly words: string;
}

export const STONE_STATE_WORDS: Readonly<Record<StoneState, StateWords>> = {
  "not-begun": { tone: "idle", words: "Not begun" },
  "on-the-bench": { tone: "active", words: "On the bench" },
  "handed-in": { tone: "done", words: "Handed in" },
  "debrief-ready": { tone: "ready", words: "Debrief ready" },
  missed: { tone: "bad", words: "Missed" },
};

export const EXERCISE_PHASE_WORDS: Readonly<Record<ExercisePhase, StateWords>> = {
  ahead: { tone: "idle", words: "Opens later" },
  open: { tone: "active", words: "Open" },
  late: { tone: "bad", words: "Past due, still taken" },
  closed: { tone: "done", words: "Closed" },
};

export const CELL_STATE_WORDS: Readonly<Record<ReviewCell["state"], StateWords>> = {
  "not-begun": { tone: "idle", words: "Not begun" },
  "on-the-bench": { tone: "active", words: "On the bench" },
  scoring: { tone: "done", words: "Being scored" },
  scored: { tone: "done", words: "Scored" },
  released: { tone: "ready", words: "Released" },
};
