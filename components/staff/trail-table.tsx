"use client";

import { toActionWords } from "@/components/staff/to-action-words";
import { type DataColumn, DataTable } from "@/components/ui/data-table";
import { When } from "@/components/ui/when";
import type { TrailRow } from "@/lib/plot/staff-view";

const COLUMNS: readonly DataColumn<TrailRow>[] = [
  { key: "at", header: "When", value: ({ at }) => at, cell: ({ at }) => <When iso={at} /> },
  { key: "actor", header: "Who", value: ({ actorName }) => actorName, isRowHeader: true },
  { key: "action", header: "Did what", value: ({ action }) => toActionWords(action) },
  { key: "kind", header: "To a", value: ({ subjectKind }) => subjectKind.replaceAll("-", " ") },
  { key: "detail", header: "Detail", value: ({ detail }) => detail },
  {
    key: "subject",
    header: "Its number",
    value: ({ subjectId }) => subjectId,
    cell: ({ subjectId }) => <code title={subjectId}>{subjectId.slice(0, 8)}</code>,
  },
];

/** One page of the trail. */
export function TrailTable({ rows }: { rows: readonly TrailRow[] }) {
  return (
    <DataTable
      caption="Changes on this page"
      rows={rows}
      columns={COLUMNS}
      rowKey={(row) => `${row.at} ${row.action} ${row.subjectId} ${row.detail}`}
      csvName="trail"
    />
  );
}
