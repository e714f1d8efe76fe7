import type { Transaction } from "@/lib/data/store/database";
import { readStoneCode } from "@/lib/plot/stone-code";

/** The id of the stone that a scanned address or typed code stands for; null where there is none, or more than one. */
export async function findStoneByCode(database: Transaction, text: string): Promise<string | null> {
  const start = readStoneCode(text);
  if (start === null) return null;
  const rows = await database.stone.findMany({
    where: { id: { startsWith: start } },
    select: { id: true },
    take: 2,
  });
  return rows.length === 1 ? (rows[0]?.id ?? null) : null;
}
