"use client";

import Link from "next/link";
import classes from "@/components/program/program.module.css";
import cells from "@/components/staff/cells.module.css";
import { type DataColumn, DataTable } from "@/components/ui/data-table";

/** A stone over all sections, in figures. */
export interface ProgramStoneRow {
  readonly stoneId: string;
  readonly trayId: string;
  readonly label: string;
  readonly trayName: string;
  readonly plots: number;
  /** Per cent. */
  readonly found: number | null;
  readonly exact: number | null;
  readonly seemingPerPlot: number | null;
  readonly reasons: readonly string[];
}

const COLUMNS: readonly DataColumn<ProgramStoneRow>[] = [
  {
    key: "label",
    header: "Stone",
    value: ({ label }) => label,
    cell: ({ trayId, stoneId, label }) => (
      <Link href={`/trays/${trayId}/stones/${stoneId}#students`} className={cells.line}>
        {label}
      </Link>
    ),
    isRowHeader: true,
  },
  { key: "tray", header: "Tray", value: ({ trayName }) => trayName },
  {
    key: "reasons",
    header: "Why look at it",
    value: ({ reasons }) => reasons.join(" "),
    cell: ({ reasons }) =>
      reasons.length === 0 ? (
        <span className="muted">nothing stands out</span>
      ) : (
        <ul className={classes.reasons}>
          {reasons.map((reason) => (
            <li key={reason}>{reason}</li>
          ))}
        </ul>
      ),
  },
  { key: "plots", header: "Plots", value: ({ plots }) => plots, align: "end" },
  {
    key: "found",
    header: "Found, %",
    value: ({ found }) => (found === null ? null : Math.round(found)),
    align: "end",
  },
  {
    key: "seeming",
    header: "Seeming strays on a plot",
    value: ({ seemingPerPlot }) => (seemingPerPlot === null ? null : Number(seemingPerPlot.toFixed(2))),
    align: "end",
  },
  {
    key: "exact",
    header: "Exact, %",
    value: ({ exact }) => (exact === null ? null : Math.round(exact)),
    align: "end",
  },
];

/** Stones of the program, those with a reason to look first. */
export function ProgramStonesTable({ rows }: { rows: readonly ProgramStoneRow[] }) {
  return (
    <DataTable
      caption="Stones"
      rows={rows}
      columns={COLUMNS}
      rowKey={({ stoneId }) => stoneId}
      csvName="program-stones"
    />
  );
}
