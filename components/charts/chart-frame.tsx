import { type ReactNode, useId } from "react";
import { ChartDownloads } from "@/components/charts/chart-downloads";
import classes from "@/components/charts/chart-frame.module.css";
import type { ChartTable } from "@/components/charts/chart-table";

/** What every chart is given besides its data. */
export interface ChartWords {
  readonly title: string;
  /** The finding, in a sentence or two: what a reader who sees no picture must know. */
  readonly summary: ReactNode;
  /** Without an ending. */
  readonly fileName: string;
}

export interface ChartFrameProps extends ChartWords {
  readonly table: ChartTable;
  /** Why there is nothing to draw; shown in place of the drawing. */
  readonly empty?: string | undefined;
  /** False for a drawing that is no SVG (a matrix is a table): it is downloaded as CSV alone and has no second table. */
  readonly isSvg?: boolean;
  readonly children: ReactNode;
}

/** The numbers behind a chart. */
function TableBehind({ title, table }: { title: string; table: ChartTable }) {
  return (
    <details>
      <summary>Numbers behind it</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reachable by keyboard */}
      <section className={classes.tableScroll} aria-label={`Numbers behind ${title}`} tabIndex={0}>
        <table className={classes.table}>
          <thead>
            <tr>
              {table.header.map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {table.rows.map(([name, ...cells], row) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: rows have no other identity and never move
              <tr key={row}>
                <th scope="row">{name}</th>
                {cells.map((cell, place) => (
                  <td
                    key={table.header[place + 1] ?? place}
                    data-number={typeof cell === "number" ? "" : undefined}
                  >
                    {cell}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </details>
  );
}

/**
 * What stands around every chart: its title, its finding in words, the drawing, the numbers behind it, and its files. The
 * drawing itself is hidden from screen readers, who are given the finding and the numbers. Made on the server.
 */
export function ChartFrame(props: ChartFrameProps) {
  const { title, summary, fileName, table, empty, isSvg = true, children } = props;
  const id = useId();
  const drawingId = `${id}-drawing`;
  return (
    <figure className={classes.root} aria-labelledby={`${id}-title`}>
      <figcaption>
        <h3 id={`${id}-title`}>{title}</h3>
        <p className={classes.summary}>{summary}</p>
      </figcaption>
      {empty === undefined ? (
        <div id={drawingId} className={classes.drawing} aria-hidden={isSvg ? "true" : undefined}>
          {children}
        </div>
      ) : (
        <p className={classes.empty}>Nothing to draw: {empty}.</p>
      )}
      {table.rows.length > 0 && (
        <div className={classes.foot}>
          {isSvg ? <TableBehind title={title} table={table} /> : <span />}
          <ChartDownloads
            title={title}
            fileName={fileName}
            table={table}
            drawingId={isSvg && empty === undefined ? drawingId : null}
          />
        </div>
      )}
    </figure>
  );
}
