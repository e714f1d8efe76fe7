import { randomUUID } from "node:crypto";
import type { Counts } from "@/lib/agreement/counts";
import { CountsSchema } from "@/lib/agreement/counts-schema";
import { getDatabase, runInTransaction, type Transaction } from "@/lib/data/store/database";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toColumn } from "@/lib/data/store/to-column";
import type { TallySumKind } from "@/lib/plot/result-tally";
import { addUpTallies, TALLY_TO_ADD } from "@/lib/workflows/tally/add-up-tallies";
import { writeTallies } from "@/lib/workflows/tally/write-tallies";

export interface TallySumRow {
  readonly exerciseId: string;
  /** As TALLY_SUM_KINDS says. */
  readonly key: string;
  readonly counts: Counts;
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
    select: TALLY_TO_ADD,
  });
  await transaction.tallySum.deleteMany({ where: { exerciseId } });
  await transaction.tallySum.createMany({
    data: addUpTallies(exerciseId, tallies).map(({ counts, ...sum }) => ({
      exerciseId,
      ...sum,
      stamp: sum.kind === "exercise" ? randomUUID() : "",
      counts: toColumn(CountsSchema, counts),
    })),
  });
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
 * What the sums of exercises are known by: another stamp means other sums. Made where they are missing. What is worked out of
 * sums may be remembered by their stamps, and by nothing else: other processes write to the database too.
 */
export async function listTallyStamps(exerciseIds: readonly string[]): Promise<ReadonlyMap<string, string>> {
  await ensureTallySums(exerciseIds);
  const rows = await getDatabase().tallySum.findMany({
    where: { kind: "exercise", exerciseId: { in: [...exerciseIds] } },
    select: { exerciseId: true, stamp: true },
  });
  return new Map(rows.map(({ exerciseId, stamp }) => [exerciseId, stamp]));
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

export type TallySums = Readonly<Record<TallySumKind, readonly TallySumRow[]>>;

/** The same from the tallies themselves, as if the stones `without` had never been set. Slow beside sums that are kept. */
async function addUpWithout(
  exerciseIds: readonly string[],
  without: ReadonlySet<string>,
): Promise<(TallySumRow & { kind: TallySumKind })[]> {
  const tallies = await getDatabase().resultTally.findMany({
    where: {
      exerciseId: { in: [...exerciseIds] },
      exerciseStone: { stoneId: { notIn: [...without] } },
    },
    select: TALLY_TO_ADD,
  });
  return exerciseIds.flatMap((exerciseId) =>
    addUpTallies(
      exerciseId,
      tallies.filter((one) => one.exerciseId === exerciseId),
    ).map((sum) => ({ exerciseId, ...sum })),
  );
}

/**
 * The sums of exercises in every one of the ways, as `listTallySums` gives one. Stones whose ids are in `without` enter no
 * sum.
 */
export async function listAllTallySums(
  exerciseIds: readonly string[],
  without: ReadonlySet<string> = new Set(),
): Promise<TallySums> {
  await ensureTallySums(exerciseIds);
  const rows =
    without.size > 0
      ? await addUpWithout(exerciseIds, without)
      : (
          await getDatabase().tallySum.findMany({
            where: { exerciseId: { in: [...exerciseIds] } },
            select: { exerciseId: true, kind: true, key: true, counts: true },
          })
        ).map(({ counts, ...row }) => ({
          ...row,
          counts: parseColumn(CountsSchema, counts, "TallySum.counts"),
        }));
  const pick = (wanted: TallySumKind) => rows.filter(({ kind }) => kind === wanted);
  return {
    exercise: pick("exercise"),
    stone: pick("stone"),
    student: pick("student"),
    week: pick("week"),
  };
}
