import { setImmediate as giveWay } from "node:timers/promises";
import { getDatabase, runInTransaction, type Transaction } from "@/lib/data/store/database";
import { discardRescoreRow, findRescore, isOvertakenNow } from "@/lib/data/store/find-rescore";
import { listOverrules } from "@/lib/data/store/list-overrules";
import { isOlder, listScored, toGroundNow } from "@/lib/data/store/list-scored";
import {
  readScoringGround,
  type ScoringGround,
  scoreOnGround,
  toResultColumns,
} from "@/lib/workflows/scoring/scoring-ground";

/** So many are kept in one transaction: what an end of the process costs at most. */
const BATCH = 25;

// One per process: the framework loads this file once for pages and once for actions.
const holder = globalThis as typeof globalThis & { loupeworkRescores?: Map<string, Promise<void>> };

type Scored = ReturnType<typeof toResultColumns> & { readonly handInId: string };
type Batch = readonly string[];

/** Scores some hand-ins by their overrules in force; one that cannot be is told to the log by its id and left out. */
async function scoreBatch(database: Transaction, ground: ScoringGround, handInIds: Batch): Promise<Scored[]> {
  const handIns = await database.handIn.findMany({
    where: { id: { in: [...handInIds] } },
    select: {
      id: true,
      plot: true,
      sitting: { select: { id: true, exerciseStoneId: true, student: { select: { login: true } } } },
    },
  });
  const ruled = await listOverrules(
    database,
    handIns.map(({ sitting }) => sitting.id),
  );
  const scored: Scored[] = [];
  for (const { id, plot, sitting } of handIns) {
    const { exerciseStoneId, student } = sitting;
    try {
      const { overrules, reviewRevision } = ruled.get(sitting.id) ?? { overrules: [], reviewRevision: 0 };
      const one = scoreOnGround(ground, exerciseStoneId, { plot, login: student.login, overrules });
      if (one === null) continue;
      scored.push({ handInId: id, ...toResultColumns(ground, exerciseStoneId, one, reviewRevision) });
    } catch (thrown) {
      console.error(`hand-in ${id} could not be rescored`, thrown);
    }
    await giveWay();
  }
  return scored;
}

/** What was scored, with those anew whose review was changed since it was read. */
async function followReviews(
  transaction: Transaction,
  ground: ScoringGround,
  scored: readonly Scored[],
): Promise<readonly Scored[]> {
  const rows = await transaction.handIn.findMany({
    where: { id: { in: scored.map(({ handInId }) => handInId) } },
    select: { id: true, sitting: { select: { reviewRevision: true } } },
  });
  const now = new Map(rows.map(({ id, sitting }) => [id, sitting.reviewRevision]));
  const isStale = ({ handInId, reviewRevision }: Scored) => now.get(handInId) !== reviewRevision;
  const stale = scored.filter(isStale).map(({ handInId }) => handInId);
  if (stale.length === 0) return scored;
  return [...scored.filter((one) => !isStale(one)), ...(await scoreBatch(transaction, ground, stale))];
}

/**
 * Keeps a batch with the rescore, not current, and how far it is. False where the rescore is over: discarded meanwhile,
 * or overtaken by a newer rubric, reference or body, which discards it.
 */
async function keepBatch(
  rescoreId: string,
  ground: ScoringGround,
  seenTo: number,
  scored: readonly Scored[],
): Promise<boolean> {
  return runInTransaction(async (transaction) => {
    const found = await findRescore(transaction, rescoreId);
    if (found === null || found.row.state !== "working") return false;
    if (isOvertakenNow(found.row)) {
      await discardRescoreRow(transaction, rescoreId, null);
      return false;
    }
    for (const one of await followReviews(transaction, ground, scored)) {
      await transaction.result.create({ data: { ...one, rescoreId, isCurrent: false } });
    }
    await transaction.rescore.update({
      where: { id: rescoreId },
      data: { done: { increment: seenTo }, failed: { increment: seenTo - scored.length } },
    });
    return true;
  });
}

/** What is still to be scored: the older results of the exercise that the rescore has none for yet. */
async function listRemaining(
  rescoreId: string,
): Promise<{ ground: ScoringGround; handInIds: string[] } | null> {
  return runInTransaction(async (transaction) => {
    const found = await findRescore(transaction, rescoreId);
    if (found === null || found.row.state !== "working") return null;
    const { row } = found;
    if (isOvertakenNow(row)) {
      await discardRescoreRow(transaction, rescoreId, null);
      return null;
    }
    const has = await transaction.result.findMany({ where: { rescoreId }, select: { handInId: true } });
    const done = new Set(has.map(({ handInId }) => handInId));
    const older = (await listScored(transaction, row.exerciseId, toGroundNow(row.exercise))).filter(isOlder);
    await transaction.rescore.update({
      where: { id: rescoreId },
      data: { total: older.length, done: done.size, failed: 0 },
    });
    const handInIds = older.map(({ handInId }) => handInId).filter((id) => !done.has(id));
    return { ground: readScoringGround(row.exercise), handInIds };
  });
}

async function workOut(rescoreId: string): Promise<void> {
  const remaining = await listRemaining(rescoreId);
  if (remaining === null) return;
  const { ground, handInIds } = remaining;
  for (let from = 0; from < handInIds.length; from += BATCH) {
    const batch = handInIds.slice(from, from + BATCH);
    const scored = await scoreBatch(getDatabase(), ground, batch);
    if (!(await keepBatch(rescoreId, ground, batch.length, scored))) return;
  }
  await getDatabase().rescore.updateMany({
    where: { id: rescoreId, state: "working" },
    data: { state: "ready" },
  });
}

/**
 * Works a rescore out, from where it stands: after a start, and again after a restart. Its results are kept beside the
 * current ones, which stay in sight; when all are there it is ready to be applied. Asked for twice at once in a process, it
 * runs once. Nothing is done for one that is over. The program's own step; never throws for a single plot.
 */
export async function runRescore(rescoreId: string): Promise<void> {
  holder.loupeworkRescores ??= new Map();
  const running = holder.loupeworkRescores;
  const known = running.get(rescoreId);
  if (known !== undefined) return known;
  const work = workOut(rescoreId).finally(() => running.delete(rescoreId));
  running.set(rescoreId, work);
  return work;
}
