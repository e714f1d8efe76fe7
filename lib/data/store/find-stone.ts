import type { Resource } from "@/lib/access/can";
import type { Transaction } from "@/lib/data/store/database";
import type { Prisma } from "@/prisma/generated/client";

const STONE_PARTS = {
  tray: true,
  references: { orderBy: { version: "desc" }, include: { author: { select: { name: true } } } },
} as const satisfies Prisma.StoneInclude;

export type StoneWithParts = Prisma.StoneGetPayload<{ include: typeof STONE_PARTS }>;

export interface FoundStone extends Resource {
  readonly row: StoneWithParts;
}

/** Looks a stone up by id, with its tray and all versions of its reference, newest first; null when there is none. */
export async function findStone(database: Transaction, stoneId: string): Promise<FoundStone | null> {
  const row = await database.stone.findUnique({ where: { id: stoneId }, include: STONE_PARTS });
  return row === null ? null : { row, ownerId: row.tray.ownerId };
}
