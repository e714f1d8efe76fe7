"use client";

import { useMemo } from "react";
import cells from "@/components/staff/cells.module.css";
import { toActionWords } from "@/components/staff/to-action-words";
import { type DataColumn, DataTable } from "@/components/ui/data-table";
import { When } from "@/components/ui/when";
import type { TrailRow } from "@/lib/plot/staff-view";

const ID = /[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}/g;

/** Ids of people as their names, others by their first eight digits. */
function nameIds(text: string, names: ReadonlyMap<string, string>): string {
  return text.replaceAll(ID, (id) => names.get(id) ?? id.slice(0, 8));
}

const buildColumns = (names: ReadonlyMap<string, string>): readonly DataColumn<TrailRow>[] => [
  {
    key: "at",
    header: "When",
    value: ({ at }) => at,
    cell: ({ at }) => (
      <span className={cells.line}>
        <When iso={at} />
      </span>
    ),
  },
  {
    key: "actor",
    header: "Who",
    value: ({ actorName }) => actorName,
    cell: ({ actorName }) => <span className={cells.line}>{actorName}</span>,
    isRowHeader: true,
  },
  {
    key: "action",
    header: "Did what",
    value: ({ action }) => toActionWords(action),
    cell: ({ action }) => <span className={cells.line}>{toActionWords(action)}</span>,
  },
  { key: "kind", header: "To a", value: ({ subjectKind }) => subjectKind.replaceAll("-", " ") },
  {
    key: "detail",
    header: "Detail",
    value: ({ detail }) => nameIds(detail, names),
    cell: ({ detail }) => <span className={cells.words}>{nameIds(detail, names)}</span>,
  },
  {
    key: "subject",
    header: "Which",
    value: ({ subjectId }) => names.get(subjectId) ?? subjectId,
    cell: ({ subjectId }) =>
      names.get(subjectId) ?? <code title={subjectId}>{nameIds(subjectId, names)}</code>,
  },
];

export interface TrailTableProps {
  rows: readonly TrailRow[];
  people: readonly { readonly userId: string; readonly name: string }[];
}

/** One page of the trail; people are shown by the names that they have now. */
export function TrailTable({ rows, people }: TrailTableProps) {
  const columns = useMemo(
    () => buildColumns(new Map(people.map(({ userId, name }) => [userId, name]))),
    [people],
  );
  return (
    <DataTable
      caption="Changes on this page"
      rows={rows}
      columns={columns}
      rowKey={(row) => `${row.at} ${row.action} ${row.subjectId} ${row.detail}`}
      csvName="trail"
    />
  );
}
