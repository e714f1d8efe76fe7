import { isDeepStrictEqual } from "node:util";
import type { Resource } from "@/lib/access/can";
import type { Transaction } from "@/lib/data/store/database";
import { type GroundNow, toGroundNow } from "@/lib/data/store/list-scored";
import { parseColumn } from "@/lib/data/store/parse-column";
import { type RescoreGround, RescoreGroundSchema } from "@/lib/plot/rescore";
import type { Prisma } from "@/prisma/generated/client";

const LATEST = { orderBy: { version: "desc" }, take: 1 } as const;

/** A rescore with who was at it, and its exercise as it stands now. */
export const RESCORE_PARTS = {
  startedBy: { select: { name: true } },
  endedBy: { select: { name: true } },
  exercise: {
    include: {
      section: { include: { instructors: true } },
      rubrics: LATEST,
      stones: { orderBy: { position: "asc" }, include: { stone: { include: { references: LATEST } } } },
    },
  },
} as const satisfies Prisma.RescoreInclude;

export type RescoreWithParts = Prisma.RescoreGetPayload<{ include: typeof RESCORE_PARTS }>;

export interface FoundRescore extends Resource {
  readonly row: RescoreWithParts;
}

/** Looks a rescore up by id, with its exercise as it stands now; null when there is none. */
export async function findRescore(database: Transaction, rescoreId: string): Promise<FoundRescore | null> {
  const row = await database.rescore.findUnique({ where: { id: rescoreId }, include: RESCORE_PARTS });
  if (row === null) return null;
  return { row, instructorIds: row.exercise.section.instructors.map(({ instructorId }) => instructorId) };
}

/** Whether a newer rubric, reference or body of a stone has come since the rescore was begun. */
export function isOvertaken(
  rescore: { readonly rubricVersionId: string; readonly ground: unknown },
  now: GroundNow,
): boolean {
  const ground: RescoreGround = parseColumn(RescoreGroundSchema, rescore.ground, "Rescore.ground");
  const sort = (stones: RescoreGround) =>
    [...stones].sort((a, b) => (a.exerciseStoneId < b.exerciseStoneId ? -1 : 1));
  return (
    rescore.rubricVersionId !== now.rubricVersionId || !isDeepStrictEqual(sort(ground), sort(now.stones))
  );
}

/** The same, for one with its exercise. */
export function isOvertakenNow(row: RescoreWithParts): boolean {
  return isOvertaken(row, toGroundNow(row.exercise));
}

/**
 * Closes a rescore that is not applied: its results, which nobody was shown, go. `by` is null where a newer version
 * overtook it.
 */
export async function discardRescoreRow(
  transaction: Transaction,
  rescoreId: string,
  by: { readonly userId: string } | null,
): Promise<void> {
  await transaction.result.deleteMany({ where: { rescoreId, isCurrent: false } });
  await transaction.rescore.update({
    where: { id: rescoreId },
    data: { state: "discarded", endedById: by?.userId ?? null, endedAt: new Date() },
  });
}
