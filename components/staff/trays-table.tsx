"use client";

import Link from "next/link";
import cells from "@/components/staff/cells.module.css";
import { type DataColumn, DataTable } from "@/components/ui/data-table";
import { StatusBadge } from "@/components/ui/status-badge";
import type { TrayRow } from "@/lib/plot/staff-view";

const COLUMNS: readonly DataColumn<TrayRow>[] = [
  {
    key: "name",
    header: "Tray",
    value: ({ name }) => name,
    cell: ({ trayId, name }) => (
      <Link href={`/trays/${trayId}`} className={cells.line}>
        {name}
      </Link>
    ),
    isRowHeader: true,
  },
  { key: "stones", header: "Stones", value: ({ stoneCount }) => stoneCount, align: "end" },
  {
    key: "reference",
    header: "With a reference",
    value: ({ withReference }) => withReference,
    cell: ({ stoneCount, withReference }) =>
      stoneCount === 0 ? (
        <StatusBadge tone="idle">No stone yet</StatusBadge>
      ) : withReference === stoneCount ? (
        <StatusBadge tone="ready">All {stoneCount}</StatusBadge>
      ) : (
        <StatusBadge tone="active">
          {withReference} of {stoneCount}
        </StatusBadge>
      ),
  },
  {
    key: "notes",
    header: "Notes",
    value: ({ notes }) => notes,
    cell: ({ notes }) => <span className={cells.notes}>{notes}</span>,
  },
];

/** Every tray of the program. */
export function TraysTable({ trays }: { trays: readonly TrayRow[] }) {
  return (
    <DataTable
      caption="All trays"
      rows={trays}
      columns={COLUMNS}
      rowKey={({ trayId }) => trayId}
      csvName="trays"
      initialSort={{ key: "name", down: false }}
    />
  );
}
