/**
 * The burst recogniser: quick dots in a row, the sign of a stone that was not cleaned (SPEC 5.6). Pure, so that
 * the engine reads a whole plot with it and the bench follows a sitting mark by mark.
 */
import type { PlottedMark } from "@/lib/plot/mark";
import { compareIds } from "@/lib/scoring/compare-ids";

export interface DottingRule {
  /** So many dots or more make a burst. */
  readonly burstDots: number;
  /** None more than this after the one before, in milliseconds. */
  readonly burstGapMs: number;
}

export interface DottingBurst {
  /** Ids of the dots, in the order of their times. */
  readonly dots: readonly string[];
  /** Milliseconds since the sitting opened, of the first dot and of the last. */
  readonly fromMs: number;
  readonly toMs: number;
}

type TimedMark = Pick<PlottedMark, "id" | "shape" | "atMs">;

/** How far a row of dots has come: what the bench keeps between one mark and the next. */
export interface DottingRow {
  readonly dots: readonly string[];
  readonly fromMs: number;
  readonly toMs: number;
}

export const NO_DOTS: DottingRow = { dots: [], fromMs: 0, toMs: 0 };

/**
 * The row after one more mark, in order of time. Only dots count and only dots break a row: a mark that is no dot, or
 * that has no time, leaves the row as it is.
 */
export function extendDotting(row: DottingRow, mark: TimedMark, rule: DottingRule): DottingRow {
  if (mark.shape.kind !== "dot" || mark.atMs === undefined) return row;
  const isNext = row.dots.length > 0 && mark.atMs - row.toMs <= rule.burstGapMs;
  if (!isNext) return { dots: [mark.id], fromMs: mark.atMs, toMs: mark.atMs };
  return { dots: [...row.dots, mark.id], fromMs: row.fromMs, toMs: mark.atMs };
}

/** True when a row is long enough to be a burst. */
export function isDotting(row: DottingRow, rule: DottingRule): boolean {
  return row.dots.length >= rule.burstDots;
}

/** Every burst of a plot, in order of time, whatever the order of the marks; none for a plot without times. */
export function findDottingBursts(marks: readonly TimedMark[], rule: DottingRule): DottingBurst[] {
  const dots = marks
    .flatMap(({ id, shape, atMs }) => (shape.kind === "dot" && atMs !== undefined ? [{ id, atMs }] : []))
    .sort((a, b) => a.atMs - b.atMs || compareIds(a.id, b.id));
  const rows: { dots: string[]; fromMs: number; toMs: number }[] = [];
  for (const { id, atMs } of dots) {
    const row = rows[rows.length - 1];
    if (row === undefined || atMs - row.toMs > rule.burstGapMs) {
      rows.push({ dots: [id], fromMs: atMs, toMs: atMs });
    } else {
      row.dots.push(id);
      row.toMs = atMs;
    }
  }
  return rows.filter((row) => isDotting(row, rule));
}
