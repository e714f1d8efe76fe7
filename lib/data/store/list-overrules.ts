import type { Transaction } from "@/lib/data/store/database";
import { parseColumn } from "@/lib/data/store/parse-column";
import { type Overrule, RulingSchema } from "@/lib/plot/overrule";

/** What a sitting's plot is overruled by, and the review revision at which it was read. */
export interface SittingOverrules {
  readonly reviewRevision: number;
  /** Those in force, in the order in which they were made. */
  readonly overrules: readonly Overrule[];
}

/** The overrules in force of sittings, by sitting; every sitting that there is has an entry. */
export async function listOverrules(
  database: Transaction,
  sittingIds: readonly string[],
): Promise<ReadonlyMap<string, SittingOverrules>> {
  const rows = await database.sitting.findMany({
    where: { id: { in: [...sittingIds] } },
    select: {
      id: true,
      reviewRevision: true,
      overrules: { where: { endedAt: null }, orderBy: { revision: "asc" } },
    },
  });
  return new Map(
    rows.map(({ id, reviewRevision, overrules }) => [
      id,
      {
        reviewRevision,
        overrules: overrules.map((one) => ({
          id: one.id,
          ruling: parseColumn(RulingSchema, one.ruling, "Overrule.ruling"),
          reason: one.reason,
        })),
      },
    ]),
  );
}
