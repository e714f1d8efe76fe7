"use client";

import { type GridRow, getMeanTotal } from "@/components/staff/arrange-grid";
import { ReviewCellView } from "@/components/staff/review-cell-view";
import classes from "@/components/staff/review-grid.module.css";
import { When } from "@/components/ui/when";
import type { ReviewGrid } from "@/lib/plot/staff-view";

function toMeanText(mean: number | null): string {
  return mean === null ? "–" : mean.toFixed(1);
}

function GridHead({ grid }: { grid: ReviewGrid }) {
  return (
    <thead>
      <tr>
        <th scope="col" className={classes.corner}>
          Student
        </th>
        {grid.stones.map(({ exerciseStoneId, label, clarity, opensAt, isBlind }) => (
          <th key={exerciseStoneId} scope="col">
            {label}
            <span className={classes.small}>
              {isBlind ? "you read it blind" : (clarity ?? "no reference")}
            </span>
            {opensAt !== null && (
              <span className={classes.small}>
                opens <When iso={opensAt} />
              </span>
            )}
          </th>
        ))}
        <th scope="col" className={classes.meanHead}>
          Mean
        </th>
      </tr>
    </thead>
  );
}

function GridFoot({ grid, rows }: { grid: ReviewGrid; rows: readonly GridRow[] }) {
  return (
    <tfoot>
      <tr>
        <th scope="row" className={classes.corner}>
          Mean points
        </th>
        {grid.stones.map(({ exerciseStoneId }) => (
          <td key={exerciseStoneId}>
            {toMeanText(
              getMeanTotal(
                rows.flatMap(({ cells }) => cells.filter((cell) => cell.exerciseStoneId === exerciseStoneId)),
              ),
            )}
          </td>
        ))}
        <td>{toMeanText(getMeanTotal(rows.flatMap(({ cells }) => cells)))}</td>
      </tr>
    </tfoot>
  );
}

interface ReviewGridTableProps {
  grid: ReviewGrid;
  /** Those of its rows that are shown, in order. */
  rows: readonly GridRow[];
  query: string;
  /** The sitting that a review is likely to begin with. */
  firstId: string | null;
  selected: ReadonlySet<string>;
  onSelect: (sittingId: string, on: boolean) => void;
}

/** The table itself, with the means of rows and columns. */
export function ReviewGridTable({ grid, rows, query, firstId, selected, onSelect }: ReviewGridTableProps) {
  const labels = new Map(grid.stones.map(({ exerciseStoneId, label }) => [exerciseStoneId, label]));
  return (
    <table className={classes.table}>
      <GridHead grid={grid} />
      <tbody>
        {rows.map((row) => (
          <tr key={row.studentId}>
            <th scope="row" className={classes.corner}>
              {row.name}
            </th>
            {row.cells.map((cell) => (
              <ReviewCellView
                key={cell.exerciseStoneId}
                cell={cell}
                exerciseId={grid.exercise.exerciseId}
                query={query}
                studentName={row.name}
                stoneLabel={labels.get(cell.exerciseStoneId) ?? ""}
                isFirst={cell.sittingId !== null && cell.sittingId === firstId}
                isSelected={cell.sittingId !== null && selected.has(cell.sittingId)}
                onSelect={onSelect}
              />
            ))}
            <td className={classes.meanCell}>{toMeanText(row.mean)}</td>
          </tr>
        ))}
      </tbody>
      <GridFoot grid={grid} rows={rows} />
    </table>
  );
}
