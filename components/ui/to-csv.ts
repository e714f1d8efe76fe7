/** Tables as CSV (RFC 4180), safe to open in a spreadsheet. */

export type CsvValue = string | number | null;

/** A text that a spreadsheet would take for a formula gets an apostrophe before it; numbers stay numbers. */
function toCell(value: CsvValue): string {
  if (value === null) return "";
  if (typeof value === "number") return String(value);
  const safe = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** A header and rows as CSV with CRLF line ends. No rows gives the header alone. */
export function toCsv(header: readonly string[], rows: readonly (readonly CsvValue[])[]): string {
  return [header, ...rows].map((row) => `${row.map(toCell).join(",")}\r\n`).join("");
}
