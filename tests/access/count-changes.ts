import { getDatabase } from "@/lib/data/store/database";

/**
 * How many rows this process has written since it opened the database, rolled back or not: two counts are the same
 * when nothing was written between them.
 */
export async function countChanges(): Promise<number> {
  const rows = await getDatabase().$queryRawUnsafe<{ changes: bigint }[]>(
    "SELECT total_changes() AS changes",
  );
  return Number(rows[0]?.changes);
}
