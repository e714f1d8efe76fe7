import type { Transaction } from "@/lib/data/store/database";
import type { Prisma } from "@/prisma/generated/client";

const COUNTED_PARTS = {
  id: true,
  result: true,
  totalHundredths: true,
  reference: { select: { id: true, body: true } },
  handIn: {
    select: {
      plot: true,
      handedInAt: true,
      sitting: {
        select: {
          id: true,
          studentId: true,
          attempt: true,
          exerciseStone: {
            select: { id: true, exerciseId: true, exercise: { select: { terms: true } } },
          },
        },
      },
    },
  },
} as const satisfies Prisma.ResultSelect;

/** A result with everything that counting it needs. */
export type ResultToCount = Prisma.ResultGetPayload<{ select: typeof COUNTED_PARTS }>;

/** The results of these ids that are current, with what counting them needs; in no order. */
export async function listResultsToCount(
  database: Transaction,
  resultIds: readonly string[],
): Promise<ResultToCount[]> {
  return database.result.findMany({
    where: { id: { in: [...resultIds] }, isCurrent: true },
    select: COUNTED_PARTS,
  });
}
