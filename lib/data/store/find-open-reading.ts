import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { getDatabase, type Transaction } from "@/lib/data/store/database";

/**
 * The stones that the viewer is plotting as their second reader, blind: id to label, none for a student. Until the reading is
 * handed in or given up, whatever tells of their references is left out of what the viewer gets, or refused.
 */
export async function listBlindStones(
  viewer: Viewer,
  database: Transaction = getDatabase(),
): Promise<ReadonlyMap<string, string>> {
  if (viewer.role === "student") return new Map();
  const rows = await database.secondReading.findMany({
    where: { readerId: viewer.userId, state: "drawing" },
    select: { stone: { select: { id: true, label: true } } },
  });
  return new Map(rows.map(({ stone }) => [stone.id, stone.label]));
}

/** The viewer's second reading of a stone that is not handed in yet, by its id; null where there is none. */
export async function findOpenReading(viewer: Viewer, stoneId: string): Promise<string | null> {
  const row = await getDatabase().secondReading.findFirst({
    where: { stoneId, readerId: viewer.userId, state: "drawing" },
    select: { id: true },
  });
  return row?.id ?? null;
}

/**
 * Refuses what tells of the references of stones to whoever is reading one of them blind. Throws AppError `reading-blind`, which
 * names those stones.
 */
export async function requireUnblinded(
  viewer: Viewer,
  stoneIds: readonly string[],
  database?: Transaction,
): Promise<void> {
  const blind = await listBlindStones(viewer, database);
  const labels = stoneIds.flatMap((id) => blind.get(id) ?? []);
  if (labels.length === 0) return;
  throw new AppError(
    "reading-blind",
    `You are reading ${[...new Set(labels)].join(", ")} blind as second reader. Hand the reading in or give it up first: until then the reference, and what tells of it, is kept from you.`,
  );
}
