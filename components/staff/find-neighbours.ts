/** The pieces of work on either side of one in a review grid. Pure. */
import type { ReviewCell, ReviewGrid } from "@/lib/plot/staff-view";

export interface Neighbour {
  readonly sittingId: string;
  readonly words: string;
}

export interface Neighbours {
  readonly before: Neighbour | null;
  readonly after: Neighbour | null;
}

/** The same stone's work by the student before and after, by the grid's order; those that have not begun are passed over. */
export function findNeighbours(grid: ReviewGrid, cell: ReviewCell): Neighbours {
  const names = new Map(grid.students.map(({ studentId, name }) => [studentId, name]));
  const column = grid.cells.flatMap(({ exerciseStoneId, sittingId, studentId }) =>
    exerciseStoneId === cell.exerciseStoneId && sittingId !== null
      ? [{ sittingId, words: names.get(studentId) ?? "" }]
      : [],
  );
  const at = column.findIndex(({ sittingId }) => sittingId === cell.sittingId);
  return {
    before: at > 0 ? (column[at - 1] ?? null) : null,
    after: at < 0 ? null : (column[at + 1] ?? null),
  };
}
