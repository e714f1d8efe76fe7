/** What the demo school has set: exercises in different states and one by every rule, with dates told from the day of loading. */

import type { ExerciseRules } from "@/lib/plot/exercise-rules";

/** Of each student and each stone in turn: `i` handed in, `b` on the bench, `n` not begun. */
export type DemoProgress = Readonly<Record<string, string>>;

/** What an exercise may have beyond a preparation card. */
export interface DemoRules {
  readonly rules: Partial<ExerciseRules>;
  /** From when on debriefs open by themselves, hours from the moment of loading. */
  readonly debriefsH: number;
  /** Of the stones that open later than the exercise, hours from the moment of loading, by label. */
  readonly openings: Readonly<Record<string, number>>;
  /** Who has more time than the others. */
  readonly extension: { readonly login: string; readonly dueH: number; readonly extraMinutes: number };
}

export interface DemoExercise {
  /** Which of the demo's sets its stones are from. */
  readonly set: "first-look" | "reflections-and-glints" | "grade-boundaries";
  readonly title: string;
  readonly notes: string;
  /** Hours from the moment of loading; negative lies in the past. */
  readonly opensH: number;
  readonly dueH: number;
  readonly closesH: number;
  readonly preparation: "asked" | "required";
  readonly isReleased: boolean;
  /** Whoever took these two stones one for the other: each was plotted under the other's label. */
  readonly swapped?: { readonly login: string; readonly stones: readonly [string, string] };
  readonly beyond?: DemoRules;
  /** `null`: nobody has begun. */
  readonly progress: DemoProgress | "all-handed-in" | null;
}

const DAY = 24;

export const DEMO_SCHOOL_RULES =
  "Wipe with the lint-free cloth from your kit and nothing else; nothing wet goes on a stone unless your instructor says so. No acids, no hot water, no steam, no ultrasonic bath. One stone at a time, over the tray. Weigh it before and after.";

export const DEMO_EXERCISES: readonly DemoExercise[] = [
  {
    set: "first-look",
    title: "First look",
    notes: "Five stones, one after another. Take your time with the first two: there is not much in them.",
    opensH: -21 * DAY,
    dueH: -14 * DAY,
    closesH: -12 * DAY,
    preparation: "asked",
    isReleased: true,
    swapped: { login: "student4", stones: ["A-03", "A-04"] },
    progress: "all-handed-in",
  },
  {
    set: "reflections-and-glints",
    title: "Reflections and glints",
    notes: "Rock and tilt before you draw. Hold each stone by its landmark, if it has one.",
    opensH: -3 * DAY,
    dueH: 4 * DAY,
    closesH: 6 * DAY,
    preparation: "asked",
    isReleased: false,
    progress: {
      student1: "iibn",
      student2: "iiii",
      student3: "iiib",
      student4: "iinn",
      student5: "ibnn",
      student6: "iiii",
      student7: "iibn",
      student8: "iiii",
      student9: "iiib",
      student10: "bnnn",
      student11: "nnnn",
      student12: "nnnn",
    },
  },
  {
    set: "grade-boundaries",
    title: "Grade boundaries",
    notes: "Close calls. Here the clarity grade counts for more than usual: say what decides it.",
    opensH: -2,
    dueH: 10 * DAY,
    closesH: 12 * DAY,
    preparation: "required",
    isReleased: false,
    progress: null,
  },
];

/** On the worn stones of last term, which nobody of this class has seen: an exercise that uses every rule there is. */
export const UNSEEN_EXERCISE: DemoExercise = {
  set: "first-look",
  title: "Unseen stones",
  notes:
    "As in an examination: one stone after another, each against the clock, without its label. You have two attempts at each; the later one counts. The last stone comes out of its tray in three days.",
  opensH: -1,
  dueH: 13 * DAY,
  closesH: 15 * DAY,
  preparation: "required",
  isReleased: false,
  beyond: {
    rules: {
      proofs: "inside",
      areProofsRequired: true,
      minutesPerStone: 25,
      attempts: 2,
      isInOrder: true,
      areLabelsHidden: true,
    },
    debriefsH: 15 * DAY,
    openings: { "D-03": 3 * DAY },
    extension: { login: "student11", dueH: 14 * DAY, extraMinutes: 10 },
  },
  progress: null,
};

/** A stone that a student may sit once more, though it is handed in. */
export interface DemoRetake {
  readonly login: string;
  /** The stone's id in its set. */
  readonly stone: string;
  readonly reason: string;
  /** Whether it has been sat. */
  readonly isSat: boolean;
}

/** The retakes of an exercise: one waits for its student, one is handed in. */
export const DEMO_RETAKES: Readonly<Partial<Record<DemoExercise["set"], readonly DemoRetake[]>>> = {
  "reflections-and-glints": [
    { login: "student6", stone: "B-04", reason: "The stone had been put back dusty.", isSat: false },
    { login: "student8", stone: "B-02", reason: "The lamp failed halfway.", isSat: true },
  ],
};
