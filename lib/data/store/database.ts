/**
 * The database of this process. Only files of lib/data and lib/workflows come here, and each of them asks
 * lib/access before it answers.
 */
import "server-only";
import { AsyncLocalStorage } from "node:async_hooks";
import { mkdirSync } from "node:fs";
import { dirname } from "node:path";
import { AppError } from "@/lib/base/app-error";
import { readEnvironment } from "@/lib/data/read-environment";
import { openConnection } from "@/lib/data/store/open-connection";
import { type Prisma, PrismaClient } from "@/prisma/generated/client";

/** What a transaction may do; the same queries as the database's own. */
export type Transaction = Prisma.TransactionClient;

/** A transaction waits its turn behind every other of the process, and then has this long, ms. */
const TRANSACTION_LIMITS = { maxWait: 60_000, timeout: 60_000 };

interface Held {
  client: PrismaClient;
  url: string;
}

// One per process: the framework loads this file once for pages and once for routes.
const holder = globalThis as typeof globalThis & { loupeworkDatabase?: Held };
const inTransaction = new AsyncLocalStorage<true>();

function openDatabase(url: string): PrismaClient {
  const file = url.replace(/^file:/, "");
  mkdirSync(dirname(file), { recursive: true });
  return new PrismaClient({ adapter: openConnection(url), transactionOptions: TRANSACTION_LIMITS });
}

/**
 * The database for reads outside a transaction. Throws inside one: the connection is busy with the transaction and
 * the read would wait for itself.
 */
export function getDatabase(): PrismaClient {
  if (inTransaction.getStore()) throw new Error("inside a transaction: use the transaction's own queries");
  if (holder.loupeworkDatabase === undefined) {
    const url = readEnvironment().databaseUrl;
    holder.loupeworkDatabase = { client: openDatabase(url), url };
  }
  return holder.loupeworkDatabase.client;
}

/** SQLite's own word for a full disk, wherever the driver wrapped it. */
function isDiskFull(thrown: unknown): boolean {
  if (!(thrown instanceof Error)) return false;
  return thrown.message.includes("SQLITE_FULL") || isDiskFull(thrown.cause);
}

/**
 * Runs the work in one write transaction: all of it or nothing, and on disk when this resolves. Transactions of a
 * process run one after another; a throw rolls back and is thrown on. Throws AppError `no-room` where the disk is full.
 */
export async function runInTransaction<T>(work: (transaction: Transaction) => Promise<T>): Promise<T> {
  const database = getDatabase();
  try {
    return await database.$transaction((transaction) => inTransaction.run(true, () => work(transaction)));
  } catch (thrown) {
    if (!isDiskFull(thrown)) throw thrown;
    console.error("the disk of the database is full; nothing was written", thrown);
    throw new AppError(
      "no-room",
      "The disk of the server is full, so nothing more is saved for now. What was saved before is safe.",
    );
  }
}

/** Closes the database, if it is open; the next use opens it anew (tests, and the end of a script). */
export async function closeDatabase(): Promise<void> {
  const held = holder.loupeworkDatabase;
  delete holder.loupeworkDatabase;
  await held?.client.$disconnect();
}
