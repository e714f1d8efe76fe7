/** The review grid as rows that can be searched, ordered and counted. Pure. */
import type { ReviewCell, ReviewGrid } from "@/lib/plot/staff-view";

export interface GridRow {
  readonly studentId: string;
  readonly name: string;
  /** In the order of the grid's stones. */
  readonly cells: readonly ReviewCell[];
  /** Mean points over the scored cells; null where there is none. */
  readonly mean: number | null;
}

export const GRID_ORDERS = ["name", "mean-up", "mean-down", "open"] as const;
export type GridOrder = (typeof GRID_ORDERS)[number];

/** Mean of the totals that are there; null for none. */
export function getMeanTotal(cells: readonly ReviewCell[]): number | null {
  const totals = cells.flatMap(({ total }) => (total === null ? [] : [total]));
  return totals.length === 0 ? null : totals.reduce((sum, total) => sum + total, 0) / totals.length;
}

/** One row for each student, in the order of the grid. */
export function listGridRows({ students, stones, cells }: ReviewGrid): GridRow[] {
  const byPlace = new Map(cells.map((cell) => [`${cell.studentId} ${cell.exerciseStoneId}`, cell]));
  return students.map(({ studentId, name }) => {
    const own = stones.flatMap(({ exerciseStoneId }) => byPlace.get(`${studentId} ${exerciseStoneId}`) ?? []);
    return { studentId, name, cells: own, mean: getMeanTotal(own) };
  });
}

const countOpen = ({ cells }: GridRow) => cells.filter(({ state }) => state === "scored").length;

function compareMeans(a: GridRow, b: GridRow, sign: number): number {
  if (a.mean === null || b.mean === null) {
    return a.mean === b.mean ? 0 : a.mean === null ? 1 : -1;
  }
  return sign * (a.mean - b.mean);
}

/** Rows whose name holds the search, in the order asked for; rows that tie stay by name. Without points come last. */
export function arrangeRows(rows: readonly GridRow[], search: string, order: GridOrder): GridRow[] {
  const words = search.trim().toLocaleLowerCase("en-GB");
  const found = rows.filter(({ name }) => name.toLocaleLowerCase("en-GB").includes(words));
  const byName = found.sort((a, b) => a.name.localeCompare(b.name, "en-GB"));
  switch (order) {
    case "name":
      return byName;
    case "mean-up":
      return byName.sort((a, b) => compareMeans(a, b, 1));
    case "mean-down":
      return byName.sort((a, b) => compareMeans(a, b, -1));
    case "open":
      return byName.sort((a, b) => countOpen(b) - countOpen(a));
  }
}

/** Strays of a cell, all causes together. */
export function countStrays({ straysByCause }: ReviewCell): number {
  return Object.values(straysByCause).reduce((sum, count) => sum + count, 0);
}

/** How a clarity grade compares with the reference's, in words; null where either is missing. */
export function toBiasWords(bias: number | null): string | null {
  if (bias === null) return null;
  if (bias === 0) return "clarity exact";
  const steps = Math.abs(bias) === 1 ? "1 step" : `${Math.abs(bias)} steps`;
  return `clarity ${steps} ${bias > 0 ? "harsher" : "kinder"}`;
}

const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

/** "2 overruled, 1 comment"; empty without either. */
export function toReviewWords({ overrules, comments }: ReviewCell): string {
  const words = overrules > 0 ? [`${overrules} overruled`] : [];
  if (comments > 0) words.push(plural(comments, "comment", "comments"));
  return words.join(", ");
}

/** A cell in full words, for a screen reader and for the tooltip. */
export function toCellWords(cell: ReviewCell, stateWords: string): string {
  const parts = [stateWords];
  if (cell.total !== null) {
    parts.push(
      `${cell.total.toFixed(1)} points`,
      `${cell.found} found`,
      `${cell.overlooked} overlooked`,
      plural(countStrays(cell), "stray", "strays"),
    );
    const bias = toBiasWords(cell.clarityBias);
    if (bias !== null) parts.push(bias);
    if (cell.suspectStone !== null) parts.push(`reads like stone ${cell.suspectStone}`);
  } else if (cell.sittingId !== null) {
    parts.push(plural(cell.markCount, "mark", "marks"));
  }
  if (cell.overrules + cell.comments > 0) parts.push(toReviewWords(cell));
  if (cell.timedOut) parts.push("the time ran out");
  return parts.join(", ");
}
