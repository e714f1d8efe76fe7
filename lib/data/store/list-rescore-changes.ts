import type { Transaction } from "@/lib/data/store/database";
import type { TotalChange } from "@/lib/plot/rescore";

export interface RescoreChange extends TotalChange {
  readonly handInId: string;
}

/**
 * The points of every result that a rescore replaces, as they are and as they would be, in hundredths; the oldest hand-in
 * first. Only while it is not applied: afterwards the two are the same.
 */
export async function listRescoreChanges(database: Transaction, rescoreId: string): Promise<RescoreChange[]> {
  const rows = await database.result.findMany({
    where: { rescoreId },
    orderBy: [{ handIn: { handedInAt: "asc" } }, { handInId: "asc" }],
    select: {
      handInId: true,
      totalHundredths: true,
      handIn: { select: { results: { where: { isCurrent: true }, select: { totalHundredths: true } } } },
    },
  });
  return rows.flatMap(({ handInId, totalHundredths, handIn }) => {
    const [current] = handIn.results;
    return current === undefined
      ? []
      : [{ handInId, before: current.totalHundredths, after: totalHundredths }];
  });
}
