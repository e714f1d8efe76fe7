/** Which rows of a table are shown, in which order. Pure. */
import type { CsvValue } from "@/components/ui/to-csv";

export interface TableSort {
  readonly key: string;
  readonly down: boolean;
}

interface ValueColumn<Row> {
  readonly key: string;
  readonly value: (row: Row) => CsvValue;
}

const collator = new Intl.Collator("en-GB", { numeric: true, sensitivity: "base" });

/** Ascending; null counts as the lowest. Numbers by size, texts by the alphabet with their numbers by size. */
function compareValues(a: CsvValue, b: CsvValue): number {
  if (a === null || b === null) return a === b ? 0 : a === null ? -1 : 1;
  if (typeof a === "number" && typeof b === "number") return a - b;
  return collator.compare(String(a), String(b));
}

/** Rows in which every word of the search occurs in some column, sorted; rows that tie keep their order. */
export function findShownRows<Row>(
  rows: readonly Row[],
  columns: readonly ValueColumn<Row>[],
  search: string,
  sort: TableSort | null,
): readonly Row[] {
  const words = search.toLowerCase().split(/\s+/).filter(Boolean);
  const found =
    words.length === 0
      ? rows
      : rows.filter((row) => {
          const text = columns
            .map(({ value }) => value(row) ?? "")
            .join("\n")
            .toLowerCase();
          return words.every((word) => text.includes(word));
        });
  const column = columns.find(({ key }) => key === sort?.key);
  if (sort === null || column === undefined) return found;
  const sign = sort.down ? -1 : 1;
  return [...found].sort((a, b) => sign * compareValues(column.value(a), column.value(b)));
}
