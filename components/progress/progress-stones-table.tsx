"use client";

import Link from "next/link";
import cells from "@/components/staff/cells.module.css";
import { type DataColumn, DataTable } from "@/components/ui/data-table";
import { When } from "@/components/ui/when";
import type { ProgressView } from "@/lib/plot/progress-view";

type Row = ProgressView["stones"][number];

export interface ProgressStonesTableProps {
  readonly stones: readonly Row[];
  /** Where a sitting's debrief is read, before its id; null leaves the links out. */
  readonly debriefHref: string | null;
}

/** The stones whose debriefs are released, the latest first. */
export function ProgressStonesTable({ stones, debriefHref }: ProgressStonesTableProps) {
  const columns: readonly DataColumn<Row>[] = [
    {
      key: "label",
      header: "Stone",
      value: ({ label }) => label,
      cell: ({ label, sittingId, isClosed }) =>
        debriefHref === null || isClosed ? (
          <>
            {label}
            {isClosed && <span className="muted"> (on the bench again)</span>}
          </>
        ) : (
          <Link href={`${debriefHref}${sittingId}`}>{label}</Link>
        ),
      isRowHeader: true,
    },
    // Second, so that a phone shows it without scrolling.
    {
      key: "total",
      header: "Points",
      value: ({ total }) => total,
      cell: ({ total }) => total.toFixed(2),
      align: "end",
    },
    { key: "exercise", header: "Exercise", value: ({ exerciseTitle }) => exerciseTitle },
    {
      key: "handedInAt",
      header: "Handed in",
      value: ({ handedInAt }) => handedInAt,
      cell: ({ handedInAt }) => (
        <span className={cells.line}>
          <When iso={handedInAt} />
        </span>
      ),
    },
  ];
  return (
    <DataTable
      caption="Stones with a debrief"
      rows={stones}
      columns={columns}
      rowKey={({ sittingId }) => sittingId}
      csvName="my-stones"
    />
  );
}
