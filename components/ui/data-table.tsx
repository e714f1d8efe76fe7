"use client";

import { ActionIcon, TextInput, Tooltip } from "@mantine/core";
import { ArrowDown, ArrowUp, ChevronsUpDown, Download, Search } from "lucide-react";
import { type ReactNode, useId, useMemo, useState } from "react";
import classes from "@/components/ui/data-table.module.css";
import { downloadText } from "@/components/ui/download-text";
import { findShownRows, type TableSort } from "@/components/ui/find-shown-rows";
import { type CsvValue, toCsv } from "@/components/ui/to-csv";

export interface DataColumn<Row> {
  readonly key: string;
  readonly header: string;
  /** What is sorted, filtered and exported. */
  readonly value: (row: Row) => CsvValue;
  /** What is drawn; the value when left out. */
  readonly cell?: (row: Row) => ReactNode;
  readonly align?: "end";
  /** The column that names the row, read out as its header. */
  readonly isRowHeader?: boolean;
  /** Left out where the page is narrower than a laptop's, or than a tablet's; then another column should say it. */
  readonly hideBelow?: "laptop" | "tablet";
}

export interface DataTableProps<Row> {
  /** What the table holds, read out and shown over it. */
  readonly caption: string;
  readonly rows: readonly Row[];
  readonly columns: readonly DataColumn<Row>[];
  readonly rowKey: (row: Row) => string;
  /** File name of the export, without `.csv`; no export when left out. */
  readonly csvName?: string;
  readonly initialSort?: TableSort;
  /** Shown in place of the table when there is no row at all. */
  readonly empty?: ReactNode;
  /** Hides the search where a table is short by nature. */
  readonly canFilter?: boolean;
}

interface SortHeaderProps {
  readonly header: string;
  readonly sorted: "up" | "down" | null;
  readonly onSort: () => void;
}

function SortHeader({ header, sorted, onSort }: SortHeaderProps) {
  const Sign = sorted === "up" ? ArrowUp : sorted === "down" ? ArrowDown : ChevronsUpDown;
  return (
    <button type="button" className={classes.sort} onClick={onSort} data-sorted={sorted !== null}>
      {header}
      <Sign size={14} aria-hidden="true" />
    </button>
  );
}

/** A table that sorts by its heads, filters by text over all columns, and exports what it shows as CSV. */
export function DataTable<Row>(props: DataTableProps<Row>) {
  const { caption, rows, columns, rowKey, csvName, initialSort, empty, canFilter = true } = props;
  const [sort, setSort] = useState<TableSort | null>(initialSort ?? null);
  const [words, setWords] = useState("");
  const captionId = useId();
  const shown = useMemo(() => findShownRows(rows, columns, words, sort), [rows, columns, words, sort]);

  if (rows.length === 0 && empty !== undefined) return <>{empty}</>;

  const toggleSort = (key: string) =>
    setSort((before) => (before?.key === key ? { key, down: !before.down } : { key, down: false }));
  const exportCsv = () =>
    downloadText(
      `${csvName}.csv`,
      "text/csv;charset=utf-8",
      toCsv(
        columns.map(({ header }) => header),
        shown.map((row) => columns.map(({ value }) => value(row))),
      ),
    );

  return (
    <section className={classes.root} aria-labelledby={captionId}>
      <div className={classes.head}>
        <h2 id={captionId} className={classes.caption}>
          {caption} <span className={classes.count}>{toCount(shown.length, rows.length)}</span>
        </h2>
        <div className={`${classes.tools} no-print`}>
          {canFilter && (
            <TextInput
              aria-label={`Search ${caption.toLowerCase()}`}
              placeholder="Search"
              size="sm"
              leftSection={<Search size={15} aria-hidden="true" />}
              value={words}
              onChange={(event) => setWords(event.currentTarget.value)}
            />
          )}
          {csvName !== undefined && (
            <Tooltip label="Download what is shown as CSV">
              <ActionIcon variant="outline" size={36} aria-label="Download as CSV" onClick={exportCsv}>
                <Download size={17} aria-hidden="true" />
              </ActionIcon>
            </Tooltip>
          )}
        </div>
      </div>
      <div className={classes.scroll}>
        <table className={classes.table} aria-labelledby={captionId}>
          <thead>
            <tr>
              {columns.map(({ key, header, align, hideBelow }) => {
                const sorted = sort?.key === key ? (sort.down ? "down" : "up") : null;
                return (
                  <th
                    key={key}
                    scope="col"
                    data-align={align}
                    data-hide={hideBelow}
                    aria-sort={sorted === null ? "none" : sorted === "up" ? "ascending" : "descending"}
                  >
                    <SortHeader header={header} sorted={sorted} onSort={() => toggleSort(key)} />
                  </th>
                );
              })}
            </tr>
          </thead>
          <tbody>
            {shown.map((row) => (
              <tr key={rowKey(row)}>
                {columns.map((column) => {
                  const content = column.cell?.(row) ?? column.value(row);
                  return column.isRowHeader ? (
                    <th key={column.key} scope="row" data-align={column.align} data-hide={column.hideBelow}>
                      {content}
                    </th>
                  ) : (
                    <td key={column.key} data-align={column.align} data-hide={column.hideBelow}>
                      {content}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
        {shown.length === 0 && <p className={classes.none}>No row matches “{words}”.</p>}
      </div>
    </section>
  );
}

function toCount(shown: number, all: number): string {
  return shown === all ? String(all) : `${shown} of ${all}`;
}
