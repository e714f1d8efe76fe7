"use client";

import Link from "next/link";
import { useMemo } from "react";
import cells from "@/components/staff/cells.module.css";
import { type DataColumn, DataTable } from "@/components/ui/data-table";
import { When } from "@/components/ui/when";
import type { StoneView } from "@/lib/plot/staff-view";

type Version = StoneView["versions"][number];

function buildColumns(stoneHref: string): readonly DataColumn<Version>[] {
  return [
    {
      key: "version",
      header: "Version",
      value: ({ version }) => version,
      cell: ({ version }) => (
        <Link href={`${stoneHref}/reference/${version}`} className={cells.line}>
          Version {version}
        </Link>
      ),
      isRowHeader: true,
    },
    {
      key: "createdAt",
      header: "Saved",
      value: ({ createdAt }) => createdAt,
      cell: ({ createdAt }) => (
        <span className={cells.line}>
          <When iso={createdAt} />
        </span>
      ),
    },
    { key: "authorName", header: "By", value: ({ authorName }) => authorName },
    { key: "marks", header: "Marks", value: ({ marks }) => marks, align: "end" },
    { key: "clarity", header: "Clarity", value: ({ clarity }) => clarity },
    {
      key: "note",
      header: "Note",
      value: ({ note }) => note,
      cell: ({ note }) => <span className={cells.words}>{note}</span>,
    },
  ];
}

/** Every version of a reference; none is ever changed or lost. */
export function ReferenceVersions({
  versions,
  stoneHref,
}: {
  versions: readonly Version[];
  stoneHref: string;
}) {
  const columns = useMemo(() => buildColumns(stoneHref), [stoneHref]);
  return (
    <DataTable
      caption="Versions"
      rows={versions}
      columns={columns}
      rowKey={({ version }) => String(version)}
      initialSort={{ key: "version", down: true }}
      canFilter={false}
    />
  );
}
