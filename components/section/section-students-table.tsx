"use client";

import Link from "next/link";
import cells from "@/components/staff/cells.module.css";
import { type DataColumn, DataTable } from "@/components/ui/data-table";

/** A student of a section in figures; null where there is none. */
export interface SectionStudentRow {
  readonly studentId: string;
  readonly name: string;
  readonly plots: number;
  readonly meanTotal: number | null;
  readonly exact: number | null;
  readonly bias: number | null;
  readonly found: number | null;
  readonly straysPerPlot: number | null;
  readonly ability: number | null;
  readonly abilityError: number | null;
  /** Why there is no ability: beyond range, say. */
  readonly abilityReason: string;
}

export interface SectionStudentsTableProps {
  readonly sectionId: string;
  readonly rows: readonly SectionStudentRow[];
}

type Key = "meanTotal" | "exact" | "bias" | "found" | "straysPerPlot";

function toFigureColumn(
  key: Key,
  header: string,
  decimals: number,
  suffix = "",
): DataColumn<SectionStudentRow> {
  return {
    key,
    header,
    value: (row) => {
      const value = row[key];
      return value === null ? null : Number(value.toFixed(decimals));
    },
    cell: (row) => {
      const value = row[key];
      return value === null ? <span className="muted">none</span> : `${value.toFixed(decimals)}${suffix}`;
    },
    align: "end",
  };
}

/** Each student's figures, to sort and to open. The place on the scale allows for which stones were sat; raw shares do not. */
export function SectionStudentsTable({ sectionId, rows }: SectionStudentsTableProps) {
  const columns: readonly DataColumn<SectionStudentRow>[] = [
    {
      key: "name",
      header: "Student",
      value: ({ name }) => name,
      cell: ({ studentId, name }) => (
        <Link href={`/sections/${sectionId}/students/${studentId}`} className={cells.line}>
          {name}
        </Link>
      ),
      isRowHeader: true,
    },
    { key: "plots", header: "Plots", value: ({ plots }) => plots, align: "end" },
    toFigureColumn("meanTotal", "Points", 1),
    toFigureColumn("exact", "Exact, %", 0),
    toFigureColumn("bias", "Bias, steps", 2),
    toFigureColumn("found", "Found, %", 0),
    toFigureColumn("straysPerPlot", "Strays on a stone", 1),
    {
      key: "ability",
      header: "Finds, on the scale",
      value: ({ ability }) => (ability === null ? null : Number(ability.toFixed(2))),
      cell: ({ ability, abilityError, abilityReason }) =>
        ability === null ? (
          <span className="muted">{abilityReason}</span>
        ) : (
          <span className={cells.line}>
            {ability.toFixed(2)} ± {(abilityError ?? 0).toFixed(2)}
          </span>
        ),
      align: "end",
    },
  ];
  return (
    <DataTable
      caption="Students"
      rows={rows}
      columns={columns}
      rowKey={({ studentId }) => studentId}
      csvName="section-students"
    />
  );
}
