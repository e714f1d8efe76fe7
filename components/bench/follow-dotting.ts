/** Whether a burst of quick dots is under way on the bench (scoring.md 5.6, the default numbers). Pure. */
import type { PlottedMark } from "@/lib/plot/mark";
import { DEFAULT_RUBRIC } from "@/lib/plot/rubric";
import { findDottingBursts } from "@/lib/scoring/score-plot";

export type DottingBurst = ReturnType<typeof findDottingBursts>[number];

/** The burst that the latest dot belongs to, or null. A burst that other dots have followed is over. */
export function findBurstUnderWay(marks: readonly PlottedMark[]): DottingBurst | null {
  const last = findDottingBursts(marks, DEFAULT_RUBRIC.dust).at(-1);
  if (last === undefined) return null;
  const latestMs = Math.max(...marks.map((mark) => (mark.shape.kind === "dot" ? (mark.atMs ?? 0) : 0)));
  return last.toMs >= latestMs ? last : null;
}
