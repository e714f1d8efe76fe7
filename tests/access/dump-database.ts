import { getDatabase } from "@/lib/data/store/database";

/** Everything in the database as one text: two dumps are the same when nothing was written between them. */
export async function dumpDatabase(): Promise<string> {
  const database = getDatabase();
  const tables = await database.$queryRawUnsafe<{ name: string }[]>(
    `SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite%' ORDER BY name`,
  );
  const parts: string[] = [];
  for (const { name } of tables) {
    const rows = await database.$queryRawUnsafe(`SELECT * FROM "${name}"`);
    const text = JSON.stringify(rows, (_key, value) => (typeof value === "bigint" ? String(value) : value));
    parts.push(`${name} ${text}`);
  }
  return parts.join("\n");
}
