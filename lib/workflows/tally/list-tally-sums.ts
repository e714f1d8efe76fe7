import { type Counts, sumCounts } from "@/lib/agreement/counts";
import { CountsSchema } from "@/lib/agreement/counts-schema";
import { getDatabase, runInTransaction, type Transaction } from "@/lib/data/store/database";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toColumn } from "@/lib/data/store/to-column";
import { TALLY_SUM_KINDS, type TallySumKind, toWeek } from "@/lib/plot/result-tally";
import { writeTallies } from "@/lib/workflows/tally/write-tallies";

export interface TallySumRow {
  readonly exerciseId: string;
  /** As TALLY_SUM_KINDS says. */
  readonly key: string;
  readonly counts: Counts;
}

interface TallyToAdd {
  readonly exerciseId: string;
  readonly exerciseStoneId: string;
  readonly studentId: string;
  readonly handedInAt: Date;
  readonly counts: unknown;
}

const KEY_OF: Readonly<Record<TallySumKind, (tally: TallyToAdd) => string>> = {
  exercise: ({ exerciseId }) => exerciseId,
  stone: ({ exerciseStoneId }) => exerciseStoneId,
  student: ({ studentId }) => studentId,
  week: ({ handedInAt }) => toWeek(handedInAt),
};

/** The tallies of one exercise added up in each of the ways; the exercise's own sum is there even when it is of nothing. */
function addUp(exerciseId: string, tallies: readonly TallyToAdd[]) {
  const counted = tallies.map((tally) => ({
    tally,
    counts: parseColumn(CountsSchema, tally.counts, "ResultTally.counts"),
  }));
  return TALLY_SUM_KINDS.flatMap((kind) => {
    const groups = new Map<string, Counts[]>(kind === "exercise" ? [[exerciseId, []]] : []);
    for (const { tally, counts } of counted) {
      const key = KEY_OF[kind](tally);
      const group = groups.get(key) ?? [];
      groups.set(key, group);
      group.push(counts);
    }
    return [...groups].map(([key, group]) => ({
      exerciseId,
      kind,
      key,
      counts: toColumn(CountsSchema, sumCounts(group)),
    }));
  });
}

async function makeSums(transaction: Transaction, exerciseId: string): Promise<void> {
  const uncounted = await transaction.result.findMany({
    where: { isCurrent: true, tally: null, handIn: { sitting: { exerciseStone: { exerciseId } } } },
    select: { id: true },
  });
  await writeTallies(
    transaction,
    uncounted.map(({ id }) => id),
  );
  const tallies = await transaction.resultTally.findMany({
    where: { exerciseId },
    select: { exerciseId: true, exerciseStoneId: true, studentId: true, handedInAt: true, counts: true },
  });
  await transaction.tallySum.deleteMany({ where: { exerciseId } });
  await transaction.tallySum.createMany({ data: addUp(exerciseId, tallies) });
}

/**
 * Makes the sums of the exercises that have none: those whose tallies changed since, and those scored before there were
 * tallies, whose results are counted first. Each in a transaction of its own.
 */
export async function ensureTallySums(exerciseIds: readonly string[]): Promise<void> {
  const made = await getDatabase().tallySum.findMany({
    where: { kind: "exercise", exerciseId: { in: [...exerciseIds] } },
    select: { exerciseId: true },
  });
  const has = new Set(made.map(({ exerciseId }) => exerciseId));
  for (const exerciseId of exerciseIds) {
    if (!has.has(exerciseId)) await runInTransaction((transaction) => makeSums(transaction, exerciseId));
  }
}

/**
 * The sums of exercises by one of TALLY_SUM_KINDS, made where they are missing; of some keys only, or of all. Covers every
 * current result, released or not: for staff only, and the caller has asked lib/access. Exercises without a result give
 * one row of kind `exercise` (of nothing) and none of the others. In no order.
 */
export async function listTallySums(
  exerciseIds: readonly string[],
  kind: TallySumKind,
  keys?: readonly string[],
): Promise<TallySumRow[]> {
  await ensureTallySums(exerciseIds);
  const rows = await getDatabase().tallySum.findMany({
    where: {
      kind,
      exerciseId: { in: [...exerciseIds] },
      ...(keys === undefined ? {} : { key: { in: [...keys] } }),
    },
    select: { exerciseId: true, key: true, counts: true },
  });
  return rows.map(({ counts, ...row }) => ({
    ...row,
    counts: parseColumn(CountsSchema, counts, "TallySum.counts"),
  }));
}
