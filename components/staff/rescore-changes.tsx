"use client";

import Link from "next/link";
import { useMemo } from "react";
import classes from "@/components/staff/rescore-board.module.css";
import { type DataColumn, DataTable } from "@/components/ui/data-table";
import { toSignedPoints } from "@/lib/plot/rescore";
import type { RescoreRow } from "@/lib/plot/rescore-view";

const toMove = ({ before, after }: RescoreRow) => Math.round((after - before) * 100);

function buildColumns(exerciseId: string): readonly DataColumn<RescoreRow>[] {
  return [
    {
      key: "student",
      header: "Student",
      value: ({ studentName }) => studentName,
      cell: ({ sittingId, studentName }) => (
        <Link href={`/exercises/${exerciseId}/sittings/${sittingId}`}>{studentName}</Link>
      ),
      isRowHeader: true,
    },
    {
      key: "stone",
      header: "Stone",
      value: ({ stoneLabel, attempt }) => (attempt === 1 ? stoneLabel : `${stoneLabel}, attempt ${attempt}`),
    },
    {
      key: "before",
      header: "Points now",
      value: ({ before }) => before,
      cell: ({ before }) => before.toFixed(2),
      align: "end",
    },
    {
      key: "after",
      header: "After",
      value: ({ after }) => after,
      cell: ({ after }) => after.toFixed(2),
      align: "end",
    },
    {
      key: "move",
      header: "Change",
      value: (row) => toMove(row) / 100,
      cell: (row) => (
        <strong className={toMove(row) > 0 ? classes.up : classes.down}>{toSignedPoints(toMove(row))}</strong>
      ),
      align: "end",
    },
    {
      key: "released",
      header: "Debrief",
      value: ({ released }) => (released ? "released: the student may have read it" : "not released"),
    },
  ];
}

/** Every result whose points would change, the biggest change first. */
export function RescoreChanges({ rows, exerciseId }: { rows: readonly RescoreRow[]; exerciseId: string }) {
  const columns = useMemo(() => buildColumns(exerciseId), [exerciseId]);
  return (
    <DataTable
      caption="Points that would change"
      rows={rows}
      columns={columns}
      rowKey={({ sittingId }) => sittingId}
      csvName="loupework-rescore"
      empty={<p>No points would change; only what the results were scored by.</p>}
    />
  );
}
