import type { CsvValue } from "@/components/ui/to-csv";

/** The numbers behind a chart: shown under it on demand, and downloaded as CSV. The first cell of a row names it. */
export interface ChartTable {
  readonly header: readonly string[];
  readonly rows: readonly (readonly CsvValue[])[];
}
