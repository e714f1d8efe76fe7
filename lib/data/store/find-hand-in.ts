import type { Transaction } from "@/lib/data/store/database";
import type { Prisma } from "@/prisma/generated/client";

const LATEST = { orderBy: { version: "desc" }, take: 1 } as const;

const HAND_IN_PARTS = {
  results: {
    where: { isCurrent: true },
    select: { id: true },
  },
  sitting: {
    include: {
      student: { select: { login: true } },
      exerciseStone: {
        include: {
          stone: { include: { references: LATEST } },
          exercise: {
            include: {
              rubrics: LATEST,
              stones: {
                orderBy: { position: "asc" },
                include: { stone: { include: { references: LATEST } } },
              },
            },
          },
        },
      },
    },
  },
} as const satisfies Prisma.HandInInclude;

/** A hand-in with everything that it is scored by. */
export type HandInToScore = Prisma.HandInGetPayload<{ include: typeof HAND_IN_PARTS }>;

/** Looks a hand-in up by id; null when there is none. For the program's own scoring, which has no viewer. */
export async function findHandIn(database: Transaction, handInId: string): Promise<HandInToScore | null> {
  return database.handIn.findUnique({ where: { id: handInId }, include: HAND_IN_PARTS });
}

/** What tells whether a hand-in is to be scored. */
interface DueFacts {
  readonly results: readonly unknown[];
  readonly sitting: {
    readonly exerciseStone: { readonly stone: { readonly references: readonly unknown[] } };
  };
}

/**
 * A hand-in is due while it has no result. One that it has stays, whatever comes after it: what was scored or read is
 * not changed behind anybody's back, only by a rescore that staff have looked at. Without a reference it is never due.
 */
export function isScoringDue({ results, sitting }: DueFacts): boolean {
  return results.length === 0 && sitting.exerciseStone.stone.references.length > 0;
}

/** The ids of all hand-ins that are due, of one exercise or of all, the oldest first. */
export async function listDueHandIns(database: Transaction, exerciseId?: string): Promise<string[]> {
  const handIns = await database.handIn.findMany({
    where: {
      results: { none: { isCurrent: true } },
      sitting: {
        exerciseStone: {
          stone: { references: { some: {} } },
          ...(exerciseId === undefined ? {} : { exerciseId }),
        },
      },
    },
    orderBy: { handedInAt: "asc" },
    select: { id: true },
  });
  return handIns.map(({ id }) => id);
}
