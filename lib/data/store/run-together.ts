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

/** Runs pieces in one transaction; throws what the first of them throws, and then nothing of any is written. */
async function runAll(pieces: readonly Piece[]): Promise<void> {
  const answers = await runInTransaction(async (transaction) => {
    const made: (() => void)[] = [];
    for (const { run } of pieces) made.push(await run(transaction));
    return made;
  });
  // Only now is it on disk.
  for (const answer of answers) answer();
}

/** Runs pieces together and, where one of them spoils that, each by itself: a refusal is rare, and savepoints cost every save. */
async function runPieces(pieces: readonly Piece[]): Promise<void> {
  try {
    await runAll(pieces);
  } catch (thrown) {
    const [only] = pieces;
    if (pieces.length === 1) only?.reject(thrown);
    else for (const piece of pieces) await runPieces([piece]);
  }
}

/**
 * Runs the work in a write transaction that it may share with other such work: all of it or nothing, and on disk when
 * this resolves. Pieces run one after another, in the order in which they came. A throw takes back this piece alone and is
 * thrown on. The work may be run twice, the first time undone, so it changes nothing but the database.
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
  const runWaiting = async () => {
    pieces.isRunning = true;
    while (pieces.waiting.length > 0) await runPieces(pieces.waiting.splice(0, MOST_TOGETHER));
    pieces.isRunning = false;
  };
  if (!pieces.isRunning) void runWaiting();
  return done;
}
