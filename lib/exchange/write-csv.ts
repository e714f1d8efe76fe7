import Papa from "papaparse";

export type CsvCell = string | number | boolean | null;

/**
 * A header and rows as CSV (RFC 4180, CRLF). A text that a spreadsheet would take for a formula gets an apostrophe before
 * it; numbers stay numbers. No rows gives the header alone. For people's spreadsheets; a file with a format of its own is
 * written by `writePlainCsv`.
 */
export function writeCsv(header: readonly string[], rows: readonly (readonly CsvCell[])[]): string {
  return `${Papa.unparse(
    { fields: [...header], data: rows.map((row) => [...row]) },
    { newline: "\r\n", escapeFormulae: true },
  )}\r\n`;
}

/** The same without the apostrophes, for programs that read texts as they are; line breaks in a text become blanks. */
export function writePlainCsv(header: readonly string[], rows: readonly (readonly CsvCell[])[]): string {
  const toOneLine = (cell: CsvCell) => (typeof cell === "string" ? cell.replace(/[\r\n]+/g, " ") : cell);
  return `${Papa.unparse(
    { fields: [...header], data: rows.map((row) => row.map(toOneLine)) },
    { newline: "\r\n" },
  )}\r\n`;
}
