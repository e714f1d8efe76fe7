/** The one thing that a student does next. Pure. */
import type { MyExercise } from "@/lib/plot/student-view";

type MyStone = MyExercise["stones"][number];

export type NextStep =
  | { readonly kind: "plot"; readonly exercise: MyExercise; readonly stone: MyStone }
  | { readonly kind: "read"; readonly exercise: MyExercise; readonly stone: MyStone }
  | { readonly kind: "wait"; readonly exercise: MyExercise }
  | { readonly kind: "nothing" };

const byDue = (a: MyExercise, b: MyExercise) => Date.parse(a.dueAt) - Date.parse(b.dueAt);
const isTaken = ({ phase }: MyExercise) => phase === "open" || phase === "late";

/**
 * Work before reading, and the work that is due first; within an exercise a stone that is on the bench goes before
 * one that was not begun. With no work left, the debrief handed in last; then the exercise that opens next.
 */
export function findNextStep(exercises: readonly MyExercise[]): NextStep {
  for (const exercise of exercises.filter(isTaken).sort(byDue)) {
    const stone =
      exercise.stones.find(({ state }) => state === "on-the-bench") ??
      exercise.stones.find(({ state, opensAfter }) => state === "not-begun" && opensAfter === null);
    if (stone !== undefined) return { kind: "plot", exercise, stone };
  }
  const ready = exercises
    .flatMap((exercise) => exercise.stones.map((stone) => ({ exercise, stone })))
    .filter(({ stone }) => stone.state === "debrief-ready")
    .sort((a, b) => Date.parse(b.stone.handedInAt ?? "") - Date.parse(a.stone.handedInAt ?? ""));
  const [latest] = ready;
  if (latest !== undefined) return { kind: "read", ...latest };
  const [ahead] = exercises
    .filter(({ phase }) => phase === "ahead")
    .sort((a, b) => Date.parse(a.opensAt) - Date.parse(b.opensAt));
  return ahead === undefined ? { kind: "nothing" } : { kind: "wait", exercise: ahead };
}
