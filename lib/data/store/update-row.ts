import type { Transaction } from "@/lib/data/store/database";
import { toStored, type Value } from "@/lib/data/store/to-stored";

/**
 * Writes columns of one row past the client, which would read the whole row back: for what is written many times a
 * second. JSON is given as text. The names are the caller's constants, never input. A row that is not there stays so.
 */
export async function updateRow(
  transaction: Transaction,
  table: string,
  id: string,
  values: Readonly<Record<string, Value>>,
): Promise<void> {
  const places = Object.keys(values).map((column) => `"${column}" = ?`);
  await transaction.$executeRawUnsafe(
    `UPDATE "${table}" SET ${places.join(", ")} WHERE "id" = ?`,
    ...Object.values(values).map(toStored),
    id,
  );
}
