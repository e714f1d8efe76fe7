import type { Transaction } from "@/lib/data/store/database";
import type { Prisma } from "@/prisma/generated/client";

const LATEST = { orderBy: { version: "desc" }, take: 1 } as const;

const HAND_IN_PARTS = {
  results: {
    where: { isCurrent: true },
    select: { referenceId: true, rubricVersionId: true, stoneRevision: true },
  },
  sitting: {
    include: {
      student: { select: { login: true } },
      releases: { where: { withdrawnAt: null }, select: { id: true } },
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
  readonly results: readonly {
    readonly referenceId: string;
    readonly rubricVersionId: string;
    readonly stoneRevision: number;
  }[];
  readonly sitting: {
    readonly releases: readonly unknown[];
    readonly exerciseStone: {
      readonly stone: { readonly revision: number; readonly references: readonly { readonly id: string }[] };
      readonly exercise: { readonly rubrics: readonly { readonly id: string }[] };
    };
  };
}

/**
 * A hand-in is due when it has no result, or when its result is by an older reference, rubric or body of the stone
 * and its debrief is not released: what a student has read is not changed behind their back. Without a reference it is
 * never due.
 */
export function isScoringDue({ results, sitting }: DueFacts): boolean {
  const { stone, exercise } = sitting.exerciseStone;
  const [reference] = stone.references;
  if (reference === undefined) return false;
  const [current] = results;
  if (current === undefined) return true;
  if (sitting.releases.length > 0) return false;
  return (
    current.referenceId !== reference.id ||
    current.rubricVersionId !== exercise.rubrics[0]?.id ||
    current.stoneRevision !== stone.revision
  );
}

/** The ids of all hand-ins that are due, of one exercise or of all, the oldest first. */
export async function listDueHandIns(database: Transaction, exerciseId?: string): Promise<string[]> {
  const handIns = await database.handIn.findMany({
    where: exerciseId === undefined ? {} : { sitting: { exerciseStone: { exerciseId } } },
    orderBy: { handedInAt: "asc" },
    select: {
      id: true,
      results: HAND_IN_PARTS.results,
      sitting: {
        select: {
          releases: HAND_IN_PARTS.sitting.include.releases,
          exerciseStone: {
            select: {
              stone: { select: { revision: true, references: { ...LATEST, select: { id: true } } } },
              exercise: { select: { rubrics: { ...LATEST, select: { id: true } } } },
            },
          },
        },
      },
    },
  });
  return handIns.filter(isScoringDue).map(({ id }) => id);
}
