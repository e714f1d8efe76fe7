"use client";

import Link from "next/link";
import type { ReactNode } from "react";
import cells from "@/components/staff/cells.module.css";
import { type DataColumn, DataTable } from "@/components/ui/data-table";
import type { SectionRow } from "@/lib/plot/staff-view";

const COLUMNS: readonly DataColumn<SectionRow>[] = [
  {
    key: "name",
    header: "Section",
    value: ({ name }) => name,
    cell: ({ sectionId, name }) => (
      <Link href={`/people/sections/${sectionId}`} className={cells.line}>
        {name}
      </Link>
    ),
    isRowHeader: true,
  },
  {
    key: "term",
    header: "Term",
    value: ({ term }) => term,
    cell: ({ term }) => <span className={cells.line}>{term}</span>,
  },
  {
    key: "instructors",
    header: "Taught by",
    value: ({ instructors }) => instructors.join(", "),
    cell: ({ instructors }) =>
      instructors.length === 0 ? (
        <span className="muted">No one yet</span>
      ) : (
        <span className={cells.words}>{instructors.join(", ")}</span>
      ),
  },
  { key: "students", header: "Students", value: ({ students }) => students, align: "end" },
];

/** Sections, each leading to its enrolment. */
export function SectionsTable({ sections, empty }: { sections: readonly SectionRow[]; empty: ReactNode }) {
  return (
    <DataTable
      caption="Sections"
      rows={sections}
      columns={COLUMNS}
      rowKey={({ sectionId }) => sectionId}
      csvName="sections"
      empty={empty}
    />
  );
}
