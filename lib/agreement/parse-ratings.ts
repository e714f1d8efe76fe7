import Papa from "papaparse";
import { listRatingFaults, listScaleFaults, type Rating, refuseRatings } from "@/lib/agreement/rating";
import type { Fault } from "@/lib/base/app-error";

const COLUMNS = ["item", "rater", "grade"] as const;
type Column = (typeof COLUMNS)[number];
type Places = Readonly<Record<Column, number>>;

/** The character that parts the header's columns: a comma, else a semicolon, else a tab. */
function findDelimiter(text: string): string {
  const header = text.slice(0, text.indexOf("\n") < 0 ? text.length : text.indexOf("\n"));
  return [",", ";", "\t"].find((character) => header.includes(character)) ?? ",";
}

const isColumn = (name: string): name is Column => COLUMNS.some((column) => column === name);

/** Where each column stands, or what is wrong with the header. Blank columns are let pass. */
function readHeader(cells: readonly string[]): Places | Fault[] {
  const names = cells.map((cell) => cell.trim().toLowerCase());
  const faults = names.flatMap((name, place): Fault[] => {
    if (name === "") return [];
    if (!isColumn(name)) return [{ path: "row 1", message: `unknown column "${cells[place]?.trim()}"` }];
    return names.indexOf(name) < place ? [{ path: "row 1", message: `column "${name}" is named twice` }] : [];
  });
  for (const column of COLUMNS) {
    if (!names.includes(column)) faults.push({ path: "row 1", message: `column "${column}" is missing` });
  }
  if (faults.length > 0) return faults;
  return { item: names.indexOf("item"), rater: names.indexOf("rater"), grade: names.indexOf("grade") };
}

/** One row as a rating, or what is wrong with it. */
function readRow(cells: readonly string[], row: number, places: Places): Rating | Fault[] {
  const known = new Set(Object.values(places));
  const at = (column: Column) => cells[places[column]]?.trim() ?? "";
  const faults = COLUMNS.filter((column) => at(column) === "").map((column) => ({
    path: `row ${row}`,
    message: `no ${column}`,
  }));
  const stray = cells.find((cell, place) => !known.has(place) && cell.trim() !== "");
  if (stray !== undefined) {
    faults.push({ path: `row ${row}`, message: `"${stray.trim()}" stands in a column that has no name` });
  }
  return faults.length > 0 ? faults : { item: at("item"), rater: at("rater"), grade: at("grade"), row };
}

/**
 * Reads ratings from CSV (RFC 4180): a header that names `item`, `rater` and `grade` in any order and letter case, then
 * one rating in each row. Commas, or semicolons or tabs where the header has no comma; any line ends; a byte order mark,
 * blank rows, blanks around a cell and unnamed empty columns are let pass. Rows are counted as a spreadsheet does, the
 * header being row 1.
 *
 * A header without rows gives no rating. Throws AppError `bad-input` with every fault and its row: a missing, unknown or
 * repeated column, an empty cell, a broken quotation, a grade that is not on `scale` (compared letter by letter), or a
 * second grade by one rater for one item.
 */
export function parseRatings(text: string, scale: readonly string[]): Rating[] {
  const plain = text.replace(/^\uFEFF/, "").replace(/\r\n?/g, "\n");
  if (plain.trim() === "") throw refuseRatings([{ path: "row 1", message: "the file is empty" }]);
  const parsed = Papa.parse<string[]>(plain, { delimiter: findDelimiter(plain), newline: "\n" });
  const faults: Fault[] = listScaleFaults(scale);
  for (const error of parsed.errors) {
    if (error.type === "Quotes")
      faults.push({ path: `row ${(error.row ?? 0) + 1}`, message: "a broken quotation" });
  }
  const [header = [], ...rows] = parsed.data;
  const places = readHeader(header);
  if (Array.isArray(places)) throw refuseRatings([...faults, ...places]);
  const ratings: Rating[] = [];
  for (const [index, cells] of rows.entries()) {
    if (cells.every((cell) => cell.trim() === "")) continue;
    const read = readRow(cells, index + 2, places);
    if (Array.isArray(read)) faults.push(...read);
    else ratings.push(read);
  }
  const found = [...faults, ...listRatingFaults(ratings, scale)];
  if (found.length > 0) throw refuseRatings(found);
  return ratings;
}
