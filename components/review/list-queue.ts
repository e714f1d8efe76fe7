/** The plots that are gone through one after another, in the order of the grid. Pure. */
import { arrangeRows, type GridOrder, listGridRows } from "@/components/staff/arrange-grid";
import type { ReviewGrid } from "@/lib/plot/staff-view";

/** `stone`: down a stone's column, then the next stone; `student`: along a student's row, then the next student. */
export const QUEUE_WAYS = ["stone", "student"] as const;
export type QueueWay = (typeof QUEUE_WAYS)[number];

export interface QueueItem {
  /** The attempt that counts. */
  readonly sittingId: string;
  /** The attempts before it: whoever looks at one of them goes on from here. */
  readonly earlierIds: readonly string[];
  readonly studentName: string;
  readonly stoneLabel: string;
}

/** The scored plots of the grid as it is filtered and ordered; work that is not scored is passed over. */
export function listQueue(grid: ReviewGrid, search: string, order: GridOrder, way: QueueWay): QueueItem[] {
  const rows = arrangeRows(listGridRows(grid), search, order);
  const find = (row: (typeof rows)[number], { exerciseStoneId, label }: ReviewGrid["stones"][number]) => {
    const cell = row.cells.find((one) => one.exerciseStoneId === exerciseStoneId);
    if (cell === undefined || cell.sittingId === null) return [];
    if (cell.state !== "scored" && cell.state !== "released") return [];
    const earlierIds = cell.earlier.map(({ sittingId }) => sittingId);
    return [{ sittingId: cell.sittingId, earlierIds, studentName: row.name, stoneLabel: label }];
  };
  if (way === "student") return rows.flatMap((row) => grid.stones.flatMap((stone) => find(row, stone)));
  return grid.stones.flatMap((stone) => rows.flatMap((row) => find(row, stone)));
}

/** The place of a sitting in the queue, be it the attempt that counts or one before; -1 where the filter leaves it out. */
export function findInQueue(queue: readonly QueueItem[], sittingId: string): number {
  return queue.findIndex((one) => one.sittingId === sittingId || one.earlierIds.includes(sittingId));
}
