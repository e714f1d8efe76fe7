"use client";

import Link from "next/link";
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
    cell: ({ exerciseId, title }) => <Link href={`/exercises/${exerciseId}`}>{title}</Link>,
    isRowHeader: true,
  },
  { key: "section", header: "Section", value: ({ sectionName }) => sectionName },
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
    cell: ({ opensAt }) => <When iso={opensAt} />,
  },
  { key: "dueAt", header: "Due", value: ({ dueAt }) => dueAt, cell: ({ dueAt }) => <When iso={dueAt} /> },
  { key: "stones", header: "Stones", value: ({ stones }) => stones, align: "end" },
  {
    key: "handedIn",
    header: "Handed in",
    value: ({ handedIn }) => handedIn,
    cell: (row) => `${row.handedIn} of ${countWork(row)}`,
    align: "end",
  },
  {
    key: "released",
    header: "Released",
    value: ({ released }) => released,
    cell: ({ released, handedIn }) => `${released} of ${handedIn}`,
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
