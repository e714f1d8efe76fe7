"use client";

import Link from "next/link";
import cells from "@/components/staff/cells.module.css";
import { type DataColumn, DataTable } from "@/components/ui/data-table";
import { EmptyState } from "@/components/ui/empty-state";
import { StatusBadge } from "@/components/ui/status-badge";
import { When } from "@/components/ui/when";
import type { OutRow } from "@/lib/plot/hand-out";

const COLUMNS: readonly DataColumn<OutRow>[] = [
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
    key: "tray",
    header: "Tray",
    value: ({ trayName }) => trayName,
    cell: ({ trayId, trayName }) => (
      <Link href={`/trays/${trayId}`} className={cells.line}>
        {trayName}
      </Link>
    ),
  },
  {
    key: "holder",
    header: "With",
    value: ({ holder }) => holder,
    cell: ({ holder, isSeat }) => (
      <span className={cells.line}>
        {holder}
        {isSeat && <span className="muted"> · seat</span>}
      </span>
    ),
  },
  {
    key: "since",
    header: "Since",
    value: ({ handedOutAt }) => handedOutAt,
    cell: ({ handedOutAt }) => (
      <span className={cells.line}>
        <When iso={handedOutAt} />
      </span>
    ),
  },
  {
    key: "due",
    header: "Due back",
    value: ({ dueBackAt }) => dueBackAt,
    cell: ({ dueBackAt, isOverdue }) =>
      dueBackAt === null ? (
        <span className="muted">–</span>
      ) : isOverdue ? (
        <StatusBadge tone="bad">
          <When iso={dueBackAt} /> – overdue
        </StatusBadge>
      ) : (
        <span className={cells.line}>
          <When iso={dueBackAt} />
        </span>
      ),
  },
  { key: "by", header: "Handed out by", value: ({ handedOutBy }) => handedOutBy },
  {
    key: "note",
    header: "Note",
    value: ({ note }) => note,
    cell: ({ note }) => (note === "" ? <span className="muted">–</span> : note),
  },
];

/** Every stone that is out, of every tray. */
export function OutTable({ rows }: { rows: readonly OutRow[] }) {
  return (
    <DataTable
      caption="Out now"
      rows={rows}
      columns={COLUMNS}
      rowKey={({ handOutId }) => handOutId}
      csvName="stones out now"
      empty={
        <EmptyState title="Every stone is in its tray">
          Hand stones out from a tray’s list, or choose “Hand out” above and scan their labels.
        </EmptyState>
      }
    />
  );
}
