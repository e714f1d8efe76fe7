"use client";

import { Button, Menu } from "@mantine/core";
import { ChevronDown, Download } from "lucide-react";
import { countStrays, listGridRows } from "@/components/staff/arrange-grid";
import { downloadText } from "@/components/ui/download-text";
import { CELL_STATE_WORDS } from "@/components/ui/state-words";
import { toCsv } from "@/components/ui/to-csv";
import type { ReviewGrid } from "@/lib/plot/staff-view";

const HEADER = [
  "Student",
  "Stone",
  "State",
  "Marks",
  "Points",
  "Found",
  "Overlooked",
  "Strays",
  "Clarity, steps from the reference",
];

/** The grid as a table of one row for each student and stone. */
function toGridCsv(grid: ReviewGrid): string {
  const labels = new Map(grid.stones.map(({ exerciseStoneId, label }) => [exerciseStoneId, label]));
  return toCsv(
    HEADER,
    listGridRows(grid).flatMap(({ name, cells }) =>
      cells.map((cell) => [
        name,
        labels.get(cell.exerciseStoneId) ?? "",
        CELL_STATE_WORDS[cell.state].words,
        cell.markCount,
        cell.total,
        ...(cell.total === null ? [null, null, null] : [cell.found, cell.overlooked, countStrays(cell)]),
        cell.clarityBias,
      ]),
    ),
  );
}

/** The exercise as files: its set and plots in the open formats, and the grid as a table. */
export function ExportMenu({ grid }: { grid: ReviewGrid }) {
  const { exerciseId, title } = grid.exercise;
  return (
    <Menu position="bottom-end" shadow="md" width={290}>
      <Menu.Target>
        <Button
          variant="outline"
          leftSection={<Download size={16} aria-hidden="true" />}
          rightSection={<ChevronDown size={15} aria-hidden="true" />}
        >
          Export
        </Button>
      </Menu.Target>
      <Menu.Dropdown>
        <Menu.Item component="a" href={`/api/exercises/${exerciseId}/set.json`} download>
          Exercise set, with references (JSON)
        </Menu.Item>
        <Menu.Item component="a" href={`/api/exercises/${exerciseId}/plots.json`} download>
          Plots handed in (JSON)
        </Menu.Item>
        <Menu.Item onClick={() => downloadText(`${title}.csv`, "text/csv;charset=utf-8", toGridCsv(grid))}>
          This grid (CSV)
        </Menu.Item>
      </Menu.Dropdown>
    </Menu>
  );
}
