/** The one thing that a student does next. Pure. */
import { isStoneWaiting } from "@/components/my-stones/is-stone-waiting";
import type { MyExercise } from "@/lib/plot/student-view";

type MyStone = MyExercise["stones"][number];

export type NextStep =
  | { readonly kind: "plot"; readonly exercise: MyExercise; readonly stone: MyStone }
  | { readonly kind: "read"; readonly exercise: MyExercise; readonly stone: MyStone }
  /** `stone`: the one that opens then, where its exercise is open already. */
  | {
      readonly kind: "wait";
      readonly exercise: MyExercise;
      readonly stone: MyStone | null;
      readonly opensAt: string;
    }
  | { readonly kind: "nothing" };

type Waiting = Omit<Extract<NextStep, { kind: "wait" }>, "kind">;

/** What opens later: exercises, and stones of those that are open. */
function listWaiting(exercises: readonly MyExercise[]): Waiting[] {
  return exercises.flatMap((exercise): Waiting[] => {
    if (exercise.phase === "ahead") return [{ exercise, stone: null, opensAt: exercise.opensAt }];
    if (!isTaken(exercise)) return [];
    return exercise.stones.flatMap((stone) =>
      stone.opensAt === null ? [] : [{ exercise, stone, opensAt: stone.opensAt }],
    );
  });
}

const byDue = (a: MyExercise, b: MyExercise) => Date.parse(a.dueAt) - Date.parse(b.dueAt);
const isTaken = ({ phase }: MyExercise) => phase === "open" || phase === "late";

/** The stone on the bench whose time runs out first; undefined where none is timed. */
function findRunning(taken: readonly MyExercise[]) {
  return taken
    .flatMap((exercise) =>
      exercise.stones.flatMap((stone) =>
        stone.state === "on-the-bench" && stone.endsAt !== null
          ? [{ exercise, stone, endMs: Date.parse(stone.endsAt) }]
          : [],
      ),
    )
    .sort((a, b) => a.endMs - b.endMs)[0];
}

/**
 * A stone whose time is running before all else. Then work before reading, and the work that is due first; within an exercise a stone that is on the bench goes before
 * one that was not begun. With no work left, the debrief handed in last; then the exercise or
 * the stone that opens next.
 */
export function findNextStep(exercises: readonly MyExercise[]): NextStep {
  const taken = exercises.filter(isTaken).sort(byDue);
  const running = findRunning(taken);
  if (running !== undefined) return { kind: "plot", exercise: running.exercise, stone: running.stone };
  for (const exercise of taken) {
    const stone =
      exercise.stones.find(({ state }) => state === "on-the-bench") ??
      exercise.stones.find((one) => one.state === "not-begun" && !isStoneWaiting(one));
    if (stone !== undefined) return { kind: "plot", exercise, stone };
  }
  const ready = exercises
    .flatMap((exercise) => exercise.stones.map((stone) => ({ exercise, stone })))
    .filter(({ stone }) => stone.state === "debrief-ready")
    .sort((a, b) => Date.parse(b.stone.handedInAt ?? "") - Date.parse(a.stone.handedInAt ?? ""));
  const [latest] = ready;
  if (latest !== undefined) return { kind: "read", ...latest };
  const [next] = listWaiting(exercises).sort((a, b) => Date.parse(a.opensAt) - Date.parse(b.opensAt));
  return next === undefined ? { kind: "nothing" } : { kind: "wait", ...next };
}
