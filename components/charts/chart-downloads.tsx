"use client";

import { Button } from "@mantine/core";
import classes from "@/components/charts/chart-frame.module.css";
import type { ChartTable } from "@/components/charts/chart-table";
import { saveDrawing } from "@/components/charts/save-drawing";
import { downloadText } from "@/components/ui/download-text";
import { toCsv } from "@/components/ui/to-csv";

export interface ChartDownloadsProps {
  readonly title: string;
  /** Without an ending. */
  readonly fileName: string;
  readonly table: ChartTable;
  /** The element that the drawing lies in; null where there is none to save. */
  readonly drawingId: string | null;
}

/** The chart as files: the drawing as SVG and PNG, the numbers behind it as CSV. */
export function ChartDownloads({ title, fileName, table, drawingId }: ChartDownloadsProps) {
  const save = (kind: "svg" | "png") => {
    const drawing = drawingId === null ? null : document.getElementById(drawingId)?.querySelector("svg");
    if (drawing) void saveDrawing(drawing, fileName, kind);
  };
  const saveCsv = () =>
    downloadText(`${fileName}.csv`, "text/csv;charset=utf-8", toCsv(table.header, table.rows));
  const button = (label: string, onClick: () => void) => (
    <Button
      key={label}
      size="compact-sm"
      variant="subtle"
      onClick={onClick}
      aria-label={`Download ${title} as ${label}`}
    >
      {label}
    </Button>
  );
  return (
    <div className={`${classes.downloads} no-print`}>
      {drawingId !== null && button("SVG", () => save("svg"))}
      {drawingId !== null && button("PNG", () => save("png"))}
      {button("CSV", saveCsv)}
    </div>
  );
}
