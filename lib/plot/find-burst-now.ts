/** The burst under way on a bench, by the default numbers (scoring.md 5.6), where the engine cannot be entered. */
import type { PlottedMark } from "@/lib/plot/mark";
import { DEFAULT_RUBRIC } from "@/lib/plot/rubric";

/** The burst that the latest dot of a plot belongs to, or null. */
export function findBurstUnderWay(
  marks: readonly Pick<PlottedMark, "id" | "shape" | "atMs">[],
  _rule: unknown,
): { dots: readonly string[]; fromMs: number; toMs: number } | null {
  const rule = DEFAULT_RUBRIC.dust;
  const dots = marks
    .flatMap(({ id, shape, atMs }) => (shape.kind === "dot" && atMs !== undefined ? [{ id, atMs }] : []))
    .sort((a, b) => b.atMs - a.atMs);
  const end = dots.findIndex((dot, i) => {
    const next = dots[i + 1];
    return next === undefined || dot.atMs - next.atMs > rule.burstGapMs;
  });
  const row = dots.slice(0, end + 1).reverse();
  const first = row[0];
  const last = row.at(-1);
  if (row.length < rule.burstDots || first === undefined || last === undefined) return null;
  return { dots: row.map(({ id }) => id), fromMs: first.atMs, toMs: last.atMs };
}
