/**
 * Small pieces of work that come at once, in one write transaction: one sync to disk then serves them all. A lone piece
 * waits for nobody; while a transaction runs, the next pieces gather behind it.
 */
import "server-only";
import { runInTransaction, type Transaction } from "@/lib/data/store/database";

/** So many pieces share a transaction: it stays short, and so does what a fault of the disk takes back. */
const MOST_TOGETHER = 32;

interface Piece {
  readonly run: (transaction: Transaction) => Promise<() => void>;
  readonly reject: (thrown: unknown) => void;
}

// One per process: the framework loads this file once for pages and once for routes.
const holder = globalThis as typeof globalThis & {
  loupeworkPieces?: { waiting: Piece[]; isRunning: boolean };
};

/** Runs a piece so that what it wrote is taken back if it throws, and nothing else is. */
async function runPiece(transaction: Transaction, { run, reject }: Piece): Promise<() => void> {
  await transaction.$executeRaw`SAVEPOINT "piece"`;
  try {
    return await run(transaction);
  } catch (thrown) {
    await transaction.$executeRaw`ROLLBACK TO "piece"`;
    return () => reject(thrown);
  } finally {
    await transaction.$executeRaw`RELEASE "piece"`;
  }
}

async function runPieces(pieces: readonly Piece[]): Promise<void> {
  try {
    const answers = await runInTransaction(async (transaction) => {
      // A lone piece takes the whole transaction back with it.
      if (pieces.length === 1) return Promise.all(pieces.map(({ run }) => run(transaction)));
      const made: (() => void)[] = [];
      for (const piece of pieces) made.push(await runPiece(transaction, piece));
      return made;
    });
    // Only now is it on disk.
    for (const answer of answers) answer();
  } catch (thrown) {
    for (const { reject } of pieces) reject(thrown);
  }
}

/**
 * Runs the work in a write transaction that it may share with other such work: all of it or nothing, and on disk when
 * this resolves. Pieces run one after another, in the order in which they came. A throw takes back this piece alone and is
 * thrown on; where the transaction itself fails, all of its pieces do (AppError `no-room` where the disk is full).
 */
export function runTogether<T>(work: (transaction: Transaction) => Promise<T>): Promise<T> {
  holder.loupeworkPieces ??= { waiting: [], isRunning: false };
  const pieces = holder.loupeworkPieces;
  const done = new Promise<T>((resolve, reject) => {
    const run = async (transaction: Transaction) => {
      const value = await work(transaction);
      return () => resolve(value);
    };
    pieces.waiting.push({ run, reject });
  });
  const runAll = async () => {
    pieces.isRunning = true;
    while (pieces.waiting.length > 0) await runPieces(pieces.waiting.splice(0, MOST_TOGETHER));
    pieces.isRunning = false;
  };
  if (!pieces.isRunning) void runAll();
  return done;
}
