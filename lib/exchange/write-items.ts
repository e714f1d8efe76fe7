import { writeCsv } from "@/lib/exchange/write-csv";

/** A scored plot with which reference marks it has. */
export interface ItemPlot {
  readonly login: string;
  readonly name: string;
  readonly exerciseTitle: string;
  readonly label: string;
  readonly attempt: number;
  readonly handedInAt: Date;
  readonly hundredths: number;
  readonly clarityGap: number | null;
  readonly found: readonly string[];
  readonly overlooked: readonly string[];
}

const HEADER = [
  "Student",
  "Sign-in name",
  "Exercise",
  "Stone",
  "Attempt",
  "Handed in",
  "Points",
  "Clarity, steps from the reference",
  "Reference mark",
  "Found",
];

/** Item-level CSV: a row for each reference mark of each scored plot, 1 where it was found and 0 where not. */
export function writeItems(plots: readonly ItemPlot[]): string {
  const rows = plots.flatMap((plot) => {
    const head = [
      plot.name,
      plot.login,
      plot.exerciseTitle,
      plot.label,
      plot.attempt,
      plot.handedInAt.toISOString(),
      plot.hundredths / 100,
      plot.clarityGap,
    ];
    const toRow = (found: number) => (mark: string) => [...head, mark, found];
    return [...plot.found.map(toRow(1)), ...plot.overlooked.map(toRow(0))];
  });
  return writeCsv(HEADER, rows);
}
