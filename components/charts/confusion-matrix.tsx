import { ChartFrame, type ChartWords } from "@/components/charts/chart-frame";
import classes from "@/components/charts/confusion-matrix.module.css";
import type { ConfusionTable } from "@/lib/agreement/confusion-table";

export interface ConfusionMatrixProps extends ChartWords {
  readonly confusion: ConfusionTable;
  /** What the rows and the columns are: `Reference`, `Plotted`. */
  readonly rowLabel: string;
  readonly columnLabel: string;
  readonly emptyReason: string;
  /** How a name of a row or column is read; as it is when left out. */
  readonly toLabel?: (name: string) => string;
  /** Leaves out grades that nobody gave and no reference has. */
  readonly hidesEmpty?: boolean;
}

/** Leaves out rows and columns that are empty on both sides. */
export function dropEmptyNames({ rows, columns, counts }: ConfusionTable): ConfusionTable {
  const sumRow = (i: number) => (counts[i] ?? []).reduce((sum, count) => sum + count, 0);
  const sumColumn = (j: number) => counts.reduce((sum, row) => sum + (row[j] ?? 0), 0);
  const used = new Set([
    ...rows.filter((_, i) => sumRow(i) > 0),
    ...columns.filter((_, j) => sumColumn(j) > 0),
  ]);
  const keep = (names: readonly string[]) => names.flatMap((name, place) => (used.has(name) ? [place] : []));
  const [keptRows, keptColumns] = [keep(rows), keep(columns)];
  return {
    rows: keptRows.map((i) => rows[i] ?? ""),
    columns: keptColumns.map((j) => columns[j] ?? ""),
    counts: keptRows.map((i) => keptColumns.map((j) => counts[i]?.[j] ?? 0)),
  };
}

/** The strongest shade, per cent of ink: what stands on it keeps its contrast in both themes. */
const DEEPEST = 26;

/**
 * A labelled matrix as a table: numbers in every cell, shaded by their share of the row, with the cells where both sides
 * agree in a frame, so that it reads without shade or colour.
 */
export function ConfusionMatrix(props: ConfusionMatrixProps) {
  const {
    confusion,
    rowLabel,
    columnLabel,
    emptyReason,
    toLabel = String,
    hidesEmpty = false,
    ...words
  } = props;
  const { rows, columns, counts } = hidesEmpty ? dropEmptyNames(confusion) : confusion;
  const sums = counts.map((row) => row.reduce((sum, count) => sum + count, 0));
  const isEmpty = sums.every((sum) => sum === 0);
  return (
    <ChartFrame
      {...words}
      isSvg={false}
      table={{
        header: [`${rowLabel} \\ ${columnLabel}`, ...columns.map(toLabel)],
        rows: isEmpty ? [] : rows.map((name, i) => [toLabel(name), ...(counts[i] ?? [])]),
      }}
      empty={isEmpty ? emptyReason : undefined}
    >
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reachable by keyboard */}
      <section className={classes.scroll} aria-label={words.title} tabIndex={0}>
        <table className={classes.table}>
          <thead>
            <tr>
              <th scope="col" className={classes.corner}>
                {rowLabel} ↓ {columnLabel} →
              </th>
              {columns.map((name) => (
                <th key={name} scope="col">
                  {toLabel(name)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((name, i) => (
              <tr key={name}>
                <th scope="row">{toLabel(name)}</th>
                {columns.map((column, j) => {
                  const count = counts[i]?.[j] ?? 0;
                  const share = count / Math.max(1, sums[i] ?? 0);
                  const shade = `color-mix(in srgb, var(--lw-ink) ${(share * DEEPEST).toFixed(1)}%, transparent)`;
                  return (
                    <td key={column} data-agrees={name === column || undefined} style={{ background: shade }}>
                      {count === 0 ? <span className={classes.none}>·</span> : count}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </ChartFrame>
  );
}
