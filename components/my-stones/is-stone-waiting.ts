import type { MyExercise } from "@/lib/plot/student-view";

/** Whether a stone that was not begun cannot be yet: its date lies ahead, or the stone before it is not handed in. */
export function isStoneWaiting({
  opensAt,
  opensAfter,
}: Pick<MyExercise["stones"][number], "opensAt" | "opensAfter">): boolean {
  return opensAt !== null || opensAfter !== null;
}
