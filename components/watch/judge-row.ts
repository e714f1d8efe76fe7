/** What a row of the watch amounts to at a moment: who is dotting, not prepared, idle, stuck. Pure. */
import { PREPARATION_STEPS } from "@/lib/plot/sitting-event";
import type { WatchRow } from "@/lib/plot/watch-view";

/** A burst is spoken of for so long after its last dot, ms: long enough to walk over. */
export const DOTTING_LASTS_MS = 60_000;
/** Nothing done for so long at an open bench, ms. Looking takes a while; this is longer. */
export const IDLE_AFTER_MS = 3 * 60_000;
/** So long on a stone, ms, and nothing drawn or nothing done for `IDLE_AFTER_MS` twice over. */
export const STUCK_AFTER_MS = 10 * 60_000;
/** Work that came in so lately, ms, says that somebody is there, whatever the bench says of itself. */
const JUST_WORKED_MS = 60_000;

export const WATCH_FLAGS = ["dotting", "unprepared", "stuck", "idle"] as const;
export type WatchFlag = (typeof WATCH_FLAGS)[number];

export interface JudgedRow {
  readonly row: WatchRow;
  /** At the bench now, as far as can be told. */
  readonly isHere: boolean;
  readonly flags: readonly WatchFlag[];
  /** Since the stone was opened; until hand-in, ms. */
  readonly onStoneMs: number;
  /** Until its time runs out, ms, 0 at the least; null where it is not timed, or handed in. */
  readonly leftMs: number | null;
  /** Since the last step, or since the stone was opened, ms. */
  readonly quietMs: number;
}

function isUnprepared({ preparation, prepared }: WatchRow): boolean {
  return preparation !== "off" && prepared.length < PREPARATION_STEPS.length;
}

function listFlags(row: WatchRow, nowMs: number, onStoneMs: number, quietMs: number): WatchFlag[] {
  const flags: WatchFlag[] = [];
  const { dotting } = row;
  if (dotting !== null && nowMs - Date.parse(dotting.lastDotAt) <= DOTTING_LASTS_MS) flags.push("dotting");
  if (isUnprepared(row)) flags.push("unprepared");
  const isLong = onStoneMs >= STUCK_AFTER_MS;
  if (isLong && (row.markCount === 0 || quietMs >= 2 * IDLE_AFTER_MS)) flags.push("stuck");
  else if (quietMs >= IDLE_AFTER_MS) flags.push("idle");
  return flags;
}

/** A row at a moment of the server's clock. A bench that is closed or handed in has no flags. */
export function judgeRow(row: WatchRow, nowMs: number): JudgedRow {
  const openedMs = Date.parse(row.openedAt);
  const endMs = row.handedInAt === null ? nowMs : Date.parse(row.handedInAt);
  const onStoneMs = Math.max(0, endMs - openedMs);
  const quietMs = Math.max(0, nowMs - Date.parse(row.lastEventAt ?? row.openedAt));
  const isOpen = row.presence === "here" || row.presence === "away";
  const isHere =
    row.handedInAt === null && (isOpen || (row.presence === "unheard" && quietMs <= JUST_WORKED_MS));
  const leftMs =
    row.endsAt === null || row.handedInAt !== null ? null : Math.max(0, Date.parse(row.endsAt) - nowMs);
  const flags = isHere ? listFlags(row, nowMs, onStoneMs, quietMs) : [];
  return { row, isHere, flags, onStoneMs, leftMs, quietMs };
}

export type WatchCounts = Readonly<Record<WatchFlag | "here", number>>;

/** How many there are of each. No rows give zeros. */
export function countFlags(rows: readonly JudgedRow[]): WatchCounts {
  const count = (flag: WatchFlag) => rows.filter(({ flags }) => flags.includes(flag)).length;
  return {
    here: rows.filter(({ isHere }) => isHere).length,
    dotting: count("dotting"),
    unprepared: count("unprepared"),
    stuck: count("stuck"),
    idle: count("idle"),
  };
}

/** `here`: who is at the bench or handed in just now; `all`: everyone with an open stone. */
export type WatchWho = "here" | "all";

export interface WatchFilter {
  readonly who: WatchWho;
  readonly exerciseId: string | null;
  readonly flag: WatchFlag | null;
}

/** Whether a row is shown. A filter for a flag shows its rows alone. */
export function isShown({ row, isHere, flags }: JudgedRow, filter: WatchFilter): boolean {
  if (filter.exerciseId !== null && row.exerciseId !== filter.exerciseId) return false;
  if (filter.flag !== null) return flags.includes(filter.flag);
  return filter.who === "all" || isHere || row.handedInAt !== null;
}

export const WATCH_ORDERS = ["look", "name", "time", "marks"] as const;
export type WatchOrder = (typeof WATCH_ORDERS)[number];

/** The flag that weighs most comes first; no flag, then closed benches, last. */
function getRank({ flags, isHere }: JudgedRow): number {
  const place = WATCH_FLAGS.findIndex((flag) => flags.includes(flag));
  return place >= 0 ? place : isHere ? WATCH_FLAGS.length : WATCH_FLAGS.length + 1;
}

const byName = (a: JudgedRow, b: JudgedRow) =>
  a.row.studentName.localeCompare(b.row.studentName, "en") ||
  a.row.stoneLabel.localeCompare(b.row.stoneLabel, "en", { numeric: true }) ||
  (a.row.sittingId < b.row.sittingId ? -1 : 1);

/** The rows in an order of their own; equal ones by name. */
export function sortRows(rows: readonly JudgedRow[], order: WatchOrder): JudgedRow[] {
  const compare: Readonly<Record<WatchOrder, (a: JudgedRow, b: JudgedRow) => number>> = {
    look: (a, b) => getRank(a) - getRank(b),
    name: () => 0,
    time: (a, b) => b.onStoneMs - a.onStoneMs,
    marks: (a, b) => a.row.markCount - b.row.markCount,
  };
  return [...rows].sort((a, b) => compare[order](a, b) || byName(a, b));
}
