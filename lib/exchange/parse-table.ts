import Papa from "papaparse";
import { AppError, type Fault } from "@/lib/base/app-error";

/** A row of a table by its heads; `row` counts from 1, the head being row 1. */
export interface TableRow {
  readonly path: string;
  readonly values: Readonly<Record<string, string>>;
}

export interface Table {
  readonly file: string;
  readonly heads: readonly string[];
  readonly rows: readonly TableRow[];
}

function refuse(faults: readonly Fault[]): AppError {
  return new AppError("bad-input", "The roster was refused; nothing was written.", faults);
}

/**
 * A table from the text of a CSV file (RFC 4180; comma, semicolon or tab): its first row holds the heads, blank rows
 * are passed over, texts lose the blanks at their ends. Throws AppError `bad-input` with file and row for a quote that
 * does not close, a row with more cells than heads, a head that is missing or stands twice, and more rows than
 * `mostRows`.
 */
export function parseTable(file: string, text: string, mostRows: number): Table {
  const parsed = Papa.parse<string[]>(text, { delimitersToGuess: [",", ";", "\t"], preview: mostRows + 2 });
  const broken = parsed.errors.filter(({ type }) => type === "Quotes");
  if (broken.length > 0) {
    throw refuse(
      broken.slice(0, 40).map(({ row, message }) => ({
        path: `${file} row ${(row ?? 0) + 1}`,
        message: message.toLowerCase(),
      })),
    );
  }
  const [head = [], ...body] = parsed.data;
  const heads = head.map((one) => one.trim());
  if (heads.every((one) => one === "")) throw refuse([{ path: `${file} row 1`, message: "holds no heads" }]);
  const twice = heads.find((one, at) => one !== "" && heads.indexOf(one) !== at);
  if (twice !== undefined) {
    throw refuse([{ path: `${file} row 1`, message: `the head “${twice.slice(0, 60)}” stands twice` }]);
  }
  if (body.length > mostRows) throw refuse([{ path: file, message: `holds more than ${mostRows} rows` }]);
  const rows = body.flatMap((cells, index): TableRow[] => {
    if (cells.every((cell) => cell.trim() === "")) return [];
    const path = `${file} row ${index + 2}`;
    if (cells.slice(heads.length).some((cell) => cell.trim() !== "")) {
      throw refuse([{ path, message: "has more cells than there are heads" }]);
    }
    return [{ path, values: Object.fromEntries(heads.map((name, at) => [name, (cells[at] ?? "").trim()])) }];
  });
  return { file, heads, rows };
}

/** Refuses a table that lacks one of the columns. */
export function requireColumns({ file, heads }: Table, needed: readonly string[]): void {
  const missing = needed.filter((name) => !heads.includes(name));
  if (missing.length === 0) return;
  throw refuse(missing.map((name) => ({ path: `${file} row 1`, message: `the column ${name} is missing` })));
}
