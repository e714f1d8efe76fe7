import { createHash } from "node:crypto";
import { getDatabase } from "@/lib/data/store/database";

/** SHA-256 over every row of every table of the database that this process points at: equal where nothing was written. */
export async function hashTables(): Promise<string> {
  const database = getDatabase();
  const tables = await database.$queryRawUnsafe<{ name: string }[]>(
    "SELECT name FROM sqlite_master WHERE type = 'table' ORDER BY name",
  );
  const hash = createHash("sha256");
  for (const { name } of tables) {
    const rows = await database.$queryRawUnsafe<unknown[]>(`SELECT * FROM "${name}" ORDER BY 1, 2`);
    const text = JSON.stringify(rows, (_, value) => (typeof value === "bigint" ? `${value}n` : value));
    hash.update(`${name} ${rows.length}\n${text}\n`);
  }
  return hash.digest("hex");
}
