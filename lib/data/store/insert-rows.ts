import type { Transaction } from "@/lib/data/store/database";
import { toStored, type Value } from "@/lib/data/store/to-stored";

/** So many rows go into one statement: SQLite takes 32,766 values in one. */
const ROWS_AT_ONCE = 250;

/**
 * Writes rows of one table past the client, which takes several times as long: for what is written many times a second, and
 * for bulk. Every row has the same columns, all of the table's required ones; JSON is given as text.
 * The names are the caller's constants, never input.
 */
export async function insertRows(
  transaction: Transaction,
  table: string,
  rows: readonly Readonly<Record<string, Value>>[],
): Promise<void> {
  const columns = Object.keys(rows[0] ?? {});
  const names = columns.map((column) => `"${column}"`).join(", ");
  const places = `(${columns.map(() => "?").join(", ")})`;
  for (let from = 0; from < rows.length; from += ROWS_AT_ONCE) {
    const batch = rows.slice(from, from + ROWS_AT_ONCE);
    await transaction.$executeRawUnsafe(
      `INSERT INTO "${table}" (${names}) VALUES ${batch.map(() => places).join(", ")}`,
      ...batch.flatMap((row) => columns.map((column) => toStored(row[column] ?? null))),
    );
  }
}
