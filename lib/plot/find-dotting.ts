/**
 * The burst recogniser: quick dots in a row, the sign of a stone that was not cleaned (scoring.md 5.6). Pure and the
 * only one: the engine reads a whole plot with it, the bench and the watch follow a sitting, the replay its log.
 */
import { compareIds } from "@/lib/plot/compare-ids";
import type { DottingNoteRule } from "@/lib/plot/exercise-rules";
import type { PlottedMark } from "@/lib/plot/mark";
import type { SittingEvent } from "@/lib/plot/sitting-event";

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

/** How far a row of dots has come. */
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

/** Every row of dots, in order of time. */
function listRows(marks: readonly TimedMark[], rule: DottingRule): DottingRow[] {
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
  return rows;
}

/** Every burst of a plot, in order of time, whatever the order of the marks; none for a plot without times. */
export function findDottingBursts(marks: readonly TimedMark[], rule: DottingRule): DottingBurst[] {
  return listRows(marks, rule).filter((row) => isDotting(row, rule));
}

/**
 * The burst that the latest dot of a plot belongs to, or null: what the bench asks about and the watch shows. A burst
 * that other dots have followed is over; so is one whose dots were taken away again. Always null where the exercise
 * has the note off.
 */
export function findBurstUnderWay(
  marks: readonly TimedMark[],
  { isOn, ...rule }: DottingNoteRule,
): DottingBurst | null {
  if (!isOn) return null;
  const last = listRows(marks, rule).at(-1);
  return last !== undefined && isDotting(last, rule) ? last : null;
}

/**
 * Every burst of a log, dots that were taken away later among them: each mark counts as it was first put, at the time
 * of that event.
 */
export function findLoggedBursts(events: readonly SittingEvent[], rule: DottingRule): DottingBurst[] {
  const first = new Map<string, TimedMark>();
  for (const event of events) {
    if (event.kind !== "marks") continue;
    for (const { id, shape } of event.put) {
      if (!first.has(id)) first.set(id, { id, shape, atMs: event.atMs });
    }
  }
  return findDottingBursts([...first.values()], rule);
}
