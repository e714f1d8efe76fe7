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
      <Link href={`/sections/${sectionId}`} className={cells.line}>
        {name}
      </Link>
    ),
    isRowHeader: true,
  },
  { key: "term", header: "Term", value: ({ term }) => term },
  {
    key: "instructors",
    header: "Taught by",
    value: ({ instructors }) => (instructors.length === 0 ? "no one yet" : instructors.join(", ")),
  },
  { key: "students", header: "Students", value: ({ students }) => students, align: "end" },
];

/** Sections, each leading to its report. The search finds a term as well. */
export function ReportSectionsTable({
  sections,
  empty,
}: {
  sections: readonly SectionRow[];
  empty: ReactNode;
}) {
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
