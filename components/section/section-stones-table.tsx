"use client";

import Link from "next/link";
import cells from "@/components/staff/cells.module.css";
import { type DataColumn, DataTable } from "@/components/ui/data-table";

/** A stone that a section sat, in figures. */
export interface SectionStoneRow {
  readonly stoneId: string;
  readonly trayId: string;
  readonly label: string;
  readonly plots: number;
  /** Logits with the standard error; null where there is none, and then the reason. */
  readonly difficulty: number | null;
  readonly standardError: number | null;
  readonly reason: string;
  readonly marks: number;
  readonly foundByAll: number;
  readonly foundByNobody: number;
  /** Per cent. */
  readonly found: number | null;
  readonly straysPerPlot: number | null;
  readonly exact: number | null;
}

const toFixed = (value: number | null, decimals: number) =>
  value === null ? null : Number(value.toFixed(decimals));

const COLUMNS: readonly DataColumn<SectionStoneRow>[] = [
  {
    key: "label",
    header: "Stone",
    value: ({ label }) => label,
    cell: ({ trayId, stoneId, label }) => (
      <Link href={`/trays/${trayId}/stones/${stoneId}`} className={cells.line}>
        {label}
      </Link>
    ),
    isRowHeader: true,
  },
  {
    key: "difficulty",
    header: "Difficulty",
    value: ({ difficulty }) => toFixed(difficulty, 2),
    cell: ({ difficulty, standardError, reason }) =>
      difficulty === null ? (
        <span className="muted">{reason}</span>
      ) : (
        <span className={cells.line}>
          {difficulty.toFixed(2)} ± {(standardError ?? 0).toFixed(2)}
        </span>
      ),
    align: "end",
  },
  {
    key: "beyond",
    header: "Marks beyond range",
    value: ({ foundByAll, foundByNobody }) => foundByAll + foundByNobody,
    cell: ({ marks, foundByAll, foundByNobody }) =>
      foundByAll + foundByNobody === 0
        ? `none of ${marks}`
        : [
            foundByNobody > 0 ? `${foundByNobody} of ${marks} found by nobody` : "",
            foundByAll > 0 ? `${foundByAll} of ${marks} by all` : "",
          ]
            .filter(Boolean)
            .join(", "),
  },
  { key: "plots", header: "Plots", value: ({ plots }) => plots, align: "end" },
  { key: "found", header: "Found, %", value: ({ found }) => toFixed(found, 0), align: "end" },
  {
    key: "strays",
    header: "Strays on a stone",
    value: ({ straysPerPlot }) => toFixed(straysPerPlot, 1),
    align: "end",
  },
  { key: "exact", header: "Exact, %", value: ({ exact }) => toFixed(exact, 0), align: "end" },
];

/** Stones by difficulty, the hardest first. */
export function SectionStonesTable({ rows }: { rows: readonly SectionStoneRow[] }) {
  return (
    <DataTable
      caption="Stones by difficulty"
      rows={rows}
      columns={COLUMNS}
      rowKey={({ stoneId }) => stoneId}
      csvName="section-stones"
    />
  );
}
