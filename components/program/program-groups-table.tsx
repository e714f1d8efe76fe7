"use client";

import Link from "next/link";
import cells from "@/components/staff/cells.module.css";
import { type DataColumn, DataTable } from "@/components/ui/data-table";

/** A section, a term or an instructor in figures; shares in per cent, null with a reason where there is none. */
export interface ProgramGroupRow {
  readonly key: string;
  readonly label: string;
  readonly href: string | null;
  readonly detail: string;
  readonly sections: number;
  readonly students: number;
  readonly plots: number;
  readonly found: ShareCell;
  readonly exact: ShareCell;
  readonly withinOne: ShareCell;
  readonly bias: ShareCell;
  readonly straysPerPlot: ShareCell;
}

export interface ShareCell {
  readonly value: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly reason: string;
}

const toText = (value: number, decimals: number) => {
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
};

/** Four columns of a statistic: what is shown is the value over its interval; the parts are exported apart. */
function toColumns(
  key: string,
  header: string,
  get: (row: ProgramGroupRow) => ShareCell,
  decimals: number,
): DataColumn<ProgramGroupRow>[] {
  return [
    {
      key,
      header,
      value: (row) => {
        const { value } = get(row);
        return value === null ? null : Number(value.toFixed(decimals));
      },
      cell: (row) => {
        const { value, low, high, reason } = get(row);
        if (value === null || low === null || high === null) return <span className="muted">{reason}</span>;
        return (
          <span className={cells.line}>
            {toText(value, decimals)}{" "}
            <span className="muted">
              ({toText(low, decimals)} to {toText(high, decimals)})
            </span>
          </span>
        );
      },
      align: "end",
    },
  ];
}

export interface ProgramGroupsTableProps {
  caption: string;
  csvName: string;
  /** What a row is: `Section`. */
  rowLabel: string;
  rows: readonly ProgramGroupRow[];
  /** The column of how many sections; not where a row is one. */
  hasSections: boolean;
}

/** Groups of a program in figures with their intervals, in no order of merit. */
export function ProgramGroupsTable({
  caption,
  csvName,
  rowLabel,
  rows,
  hasSections,
}: ProgramGroupsTableProps) {
  const columns: DataColumn<ProgramGroupRow>[] = [
    {
      key: "label",
      header: rowLabel,
      value: ({ label }) => label,
      cell: ({ label, href }) =>
        href === null ? (
          label
        ) : (
          <Link href={href} className={cells.line}>
            {label}
          </Link>
        ),
      isRowHeader: true,
    },
    hasSections
      ? { key: "sections", header: "Sections", value: ({ sections }) => sections, align: "end" }
      : { key: "detail", header: "Term, taught by", value: ({ detail }) => detail },
    { key: "students", header: "Students", value: ({ students }) => students, align: "end" },
    { key: "plots", header: "Plots", value: ({ plots }) => plots, align: "end" },
    ...toColumns("found", "Found, %", ({ found }) => found, 0),
    ...toColumns("exact", "Exact, %", ({ exact }) => exact, 0),
    ...toColumns("within", "Within one, %", ({ withinOne }) => withinOne, 0),
    ...toColumns("bias", "Bias, steps", ({ bias }) => bias, 1),
    ...toColumns("strays", "Strays on a stone", ({ straysPerPlot }) => straysPerPlot, 1),
  ];
  return (
    <DataTable caption={caption} rows={rows} columns={columns} rowKey={({ key }) => key} csvName={csvName} />
  );
}
