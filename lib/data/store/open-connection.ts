/**
 * One connection to the SQLite file, kept for as long as the process holds it open.
 *
 * The adapter's own client hands its connection over to each transaction and opens a new one for what comes next:
 * settings of the connection are lost on the way, and two connections of one process can meet as writers
 * ("database is locked"). Here everything runs on one connection, in turn; a transaction takes the write lock at
 * its start (BEGIN IMMEDIATE), so that what it read cannot be changed by another process before it writes.
 */
import { PrismaLibSql } from "@prisma/adapter-libsql";

type CreateClient = PrismaLibSql["createClient"];
type Client = ReturnType<CreateClient>;
type Transaction = Awaited<ReturnType<Client["transaction"]>>;

/** How long a statement waits for another process's write, ms. */
const BUSY_MS = 10_000;

/**
 * WAL, so that readers and a backup in another process do not wait; FULL, so that a commit is on disk; recursive
 * triggers, so that INSERT OR REPLACE meets the triggers that refuse a deletion.
 */
const SETTINGS = [
  "PRAGMA journal_mode = WAL",
  "PRAGMA synchronous = FULL",
  "PRAGMA foreign_keys = ON",
  "PRAGMA recursive_triggers = ON",
  `PRAGMA busy_timeout = ${BUSY_MS}`,
];

function startTransaction(client: Client): Promise<Transaction> {
  return client.execute("BEGIN IMMEDIATE").then(() => {
    let open = true;
    const end = async (how: "COMMIT" | "ROLLBACK") => {
      if (!open) return;
      open = false;
      await client.execute(how);
    };
    return {
      execute: (statement: Parameters<Client["execute"]>[0]) => client.execute(statement),
      batch: () => Promise.reject(new Error("a transaction of this program runs its statements one by one")),
      executeMultiple: () => Promise.reject(new Error("a transaction of this program runs no scripts")),
      commit: async () => {
        try {
          await end("COMMIT");
        } catch (thrown) {
          await client.execute("ROLLBACK").catch(() => undefined);
          throw thrown;
        }
      },
      rollback: () => end("ROLLBACK"),
      close: () => void end("ROLLBACK").catch(() => undefined),
      get closed() {
        return !open;
      },
    };
  });
}

/** The adapter over one lasting connection. Prisma asks it for a connection once. */
export class LastingConnection extends PrismaLibSql {
  override createClient(config: Parameters<CreateClient>[0]): Client {
    const client = super.createClient({ ...config, timeout: BUSY_MS });
    // The local client works at once and only then answers: these are done when the first query runs.
    for (const setting of SETTINGS) {
      client.execute(setting).catch((thrown: unknown) => console.error(setting, thrown));
    }
    return new Proxy(client, {
      get(target, property) {
        if (property === "transaction") return () => startTransaction(target);
        const value: unknown = Reflect.get(target, property, target);
        return typeof value === "function" ? value.bind(target) : value;
      },
    });
  }
}

/** The adapter for a `file:` address. */
export function openConnection(databaseUrl: string): LastingConnection {
  return new LastingConnection({ url: databaseUrl });
}
