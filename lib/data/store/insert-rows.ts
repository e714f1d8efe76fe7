import type { Transaction } from "@/lib/data/store/database";

type Value = string | number | boolean | Date | null;

/** So many rows go into one statement: SQLite takes 32,766 values in one. */
const ROWS_AT_ONCE = 250;

/** A value as the driver writes it, so that rows written either way compare and sort alike. */
function toStored(value: Value): string | number | null {
  if (value instanceof Date) return value.toISOString().replace("Z", "+00:00");
  return typeof value === "boolean" ? Number(value) : value;
}

/**
 * Writes many rows of one table past the client, which takes several times as long for bulk: for filling a database of
 * its own with invented data. Every row has the same columns, all of the table's required ones; JSON is given as text.
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
