import type { Resource } from "@/lib/access/can";
import type { Transaction } from "@/lib/data/store/database";
import type { Prisma } from "@/prisma/generated/client";

const READING_PARTS = {
  stone: {
    include: {
      tray: true,
      references: { orderBy: { version: "desc" }, include: { author: { select: { name: true } } } },
    },
  },
  reader: { select: { name: true } },
  settledBy: { select: { name: true } },
} as const satisfies Prisma.SecondReadingInclude;

export type ReadingWithParts = Prisma.SecondReadingGetPayload<{ include: typeof READING_PARTS }>;

/** A reading as something of its reader's, or as something of the tray's owner's: the same row, another owner. */
export interface FoundReading extends Resource {
  readonly row: ReadingWithParts;
}

/** Looks a second reading up by id, its stone with all versions of the reference, newest first; owned by its reader. */
export async function findReading(database: Transaction, readingId: string): Promise<FoundReading | null> {
  const row = await database.secondReading.findUnique({ where: { id: readingId }, include: READING_PARTS });
  return row === null ? null : { row, ownerId: row.readerId };
}

/** The same, owned by the owner of the stone's tray. */
export async function findReadingOfTray(
  database: Transaction,
  readingId: string,
): Promise<FoundReading | null> {
  const found = await findReading(database, readingId);
  return found === null ? null : { row: found.row, ownerId: found.row.stone.tray.ownerId };
}
