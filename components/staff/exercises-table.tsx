"use client";

import Link from "next/link";
import cells from "@/components/staff/cells.module.css";
import { type DataColumn, DataTable } from "@/components/ui/data-table";
import { EXERCISE_PHASE_WORDS } from "@/components/ui/state-words";
import { StatusBadge } from "@/components/ui/status-badge";
import { When } from "@/components/ui/when";
import type { ExerciseRow } from "@/lib/plot/staff-view";

/** Pieces of work that an exercise adds up to: every student's every stone. */
const countWork = ({ students, stones }: ExerciseRow) => students * stones;

const COLUMNS: readonly DataColumn<ExerciseRow>[] = [
  {
    key: "title",
    header: "Exercise",
    value: ({ title }) => title,
    cell: ({ exerciseId, title }) => (
      <Link href={`/exercises/${exerciseId}`} className={cells.line}>
        {title}
      </Link>
    ),
    isRowHeader: true,
  },
  {
    key: "section",
    header: "Section",
    value: ({ sectionName }) => sectionName,
    cell: ({ sectionName }) => <span className={cells.words}>{sectionName}</span>,
  },
  {
    key: "phase",
    header: "State",
    value: ({ phase }) => EXERCISE_PHASE_WORDS[phase].words,
    cell: ({ phase }) => (
      <StatusBadge tone={EXERCISE_PHASE_WORDS[phase].tone}>{EXERCISE_PHASE_WORDS[phase].words}</StatusBadge>
    ),
  },
  {
    key: "opensAt",
    header: "Opens",
    value: ({ opensAt }) => opensAt,
    cell: ({ opensAt }) => (
      <span className={cells.line}>
        <When iso={opensAt} />
      </span>
    ),
  },
  {
    key: "dueAt",
    header: "Due",
    value: ({ dueAt }) => dueAt,
    cell: ({ dueAt }) => (
      <span className={cells.line}>
        <When iso={dueAt} />
      </span>
    ),
  },
  { key: "stones", header: "Stones", value: ({ stones }) => stones, align: "end" },
  {
    key: "handedIn",
    header: "Handed in",
    value: ({ handedIn }) => handedIn,
    cell: (row) => <span className={cells.line}>{`${row.handedIn} of ${countWork(row)}`}</span>,
    align: "end",
  },
  {
    key: "released",
    header: "Released",
    value: ({ released }) => released,
    cell: ({ released, handedIn }) => <span className={cells.line}>{`${released} of ${handedIn}`}</span>,
    align: "end",
  },
];

/** Every exercise of the viewer's sections. */
export function ExercisesTable({ exercises }: { exercises: readonly ExerciseRow[] }) {
  return (
    <DataTable
      caption="All exercises"
      rows={exercises}
      columns={COLUMNS}
      rowKey={({ exerciseId }) => exerciseId}
      csvName="exercises"
      initialSort={{ key: "dueAt", down: true }}
    />
  );
}
