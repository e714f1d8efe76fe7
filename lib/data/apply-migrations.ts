/**
 * Applies the committed migrations: in order, one transaction each, recorded as `prisma migrate` records them, so
 * that `prisma migrate deploy` and `status` agree. Needs no engine and runs at set-up and at start.
 */
import { createHash, randomUUID } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { AppError } from "@/lib/base/app-error";
import { openConnection } from "@/lib/data/store/open-connection";

interface Migration {
  readonly name: string;
  readonly sql: string;
  /** SHA-256 of the file, hex. */
  readonly checksum: string;
}

interface Applied {
  readonly name: string;
  readonly checksum: string;
  readonly finished: boolean;
}

type Connection = Awaited<ReturnType<ReturnType<typeof openConnection>["connect"]>>;

/** The bookkeeping table as `prisma migrate` makes it on SQLite. */
const BOOKKEEPING = `CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
    "id"                    TEXT PRIMARY KEY NOT NULL,
    "checksum"              TEXT NOT NULL,
    "finished_at"           DATETIME,
    "migration_name"        TEXT NOT NULL,
    "logs"                  TEXT,
    "rolled_back_at"        DATETIME,
    "started_at"            DATETIME NOT NULL DEFAULT current_timestamp,
    "applied_steps_count"   INTEGER UNSIGNED NOT NULL DEFAULT 0
);`;

/** The migrations of a folder, in order of name. Throws AppError `not-set-up` for a folder that is not there. */
export function listMigrations(folder: string): Migration[] {
  if (!existsSync(folder))
    throw new AppError("not-set-up", `The migrations are missing: no folder ${folder}.`);
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => {
      const bytes = readFileSync(join(folder, name, "migration.sql"));
      return {
        name,
        sql: bytes.toString("utf8"),
        checksum: createHash("sha256").update(bytes).digest("hex"),
      };
    })
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

async function listApplied(connection: Connection): Promise<Applied[]> {
  const { rows } = await connection.queryRaw({
    sql: `SELECT "migration_name", "checksum", "finished_at" IS NOT NULL FROM "_prisma_migrations"
          WHERE "rolled_back_at" IS NULL ORDER BY "started_at", "migration_name"`,
    args: [],
    argTypes: [],
  });
  return rows.map(([name, checksum, finished]) => ({
    name: String(name),
    checksum: String(checksum),
    finished: Number(finished) === 1,
  }));
}

async function isApplied(connection: Connection, { name }: Migration): Promise<boolean> {
  return (await listApplied(connection)).some((one) => one.name === name);
}

/** Refuses what cannot be gone on from: a half-applied, unknown or edited migration. */
function requireAgreement(applied: readonly Applied[], migrations: readonly Migration[]): void {
  const byName = new Map(migrations.map((migration) => [migration.name, migration]));
  for (const { name, checksum, finished } of applied) {
    const migration = byName.get(name);
    const refuse = (why: string) => new AppError("not-set-up", `The database was not touched: ${why}`);
    if (!finished) throw refuse(`the migration ${name} was begun elsewhere and not finished.`);
    if (migration === undefined) {
      throw refuse(`it holds the migration ${name}, which this version of the program does not have.`);
    }
    if (migration.checksum !== checksum) {
      throw refuse(`the migration ${name} was edited after it had been applied; add a new one instead.`);
    }
  }
}

/**
 * The script of one migration. Tables may be rebuilt in it, so foreign keys are off while it runs and are checked
 * before it commits: a row without its parent breaks the last table's rule and with it the whole transaction.
 */
function toScript({ name, sql, checksum }: Migration): string {
  const now = new Date().toISOString();
  return `PRAGMA foreign_keys = OFF;
BEGIN IMMEDIATE;
${sql}
;
CREATE TEMP TABLE "orphan_check" ("orphans" INTEGER CHECK ("orphans" = 0));
INSERT INTO "orphan_check" SELECT COUNT(*) FROM pragma_foreign_key_check;
DROP TABLE "orphan_check";
INSERT INTO "_prisma_migrations" ("id", "checksum", "finished_at", "migration_name", "started_at", "applied_steps_count")
VALUES ('${randomUUID()}', '${checksum}', '${now}', '${name.replaceAll("'", "''")}', '${now}', 1);
COMMIT;
PRAGMA foreign_keys = ON;`;
}

/**
 * Brings the database at a `file:` address up to date and gives the names of the migrations that it applied, none
 * when it was up to date already. Throws AppError `not-set-up`, with nothing written, when the database and the
 * folder disagree; a migration that fails is rolled back whole and its error thrown on.
 */
export async function applyMigrations(
  databaseUrl: string,
  folder = join(process.cwd(), "prisma/migrations"),
): Promise<string[]> {
  const migrations = listMigrations(folder);
  mkdirSync(dirname(databaseUrl.replace(/^file:/, "")), { recursive: true });
  const connection = await openConnection(databaseUrl).connect();
  const done: string[] = [];
  try {
    await connection.executeScript(BOOKKEEPING);
    requireAgreement(await listApplied(connection), migrations);
    for (const migration of migrations) {
      if (await isApplied(connection, migration)) continue;
      try {
        await connection.executeScript(toScript(migration));
        done.push(migration.name);
      } catch (thrown) {
        // Another process may have applied it while this one waited for the write lock.
        if (!(await isApplied(connection, migration))) throw thrown;
      }
    }
    // The file alone then holds everything: a copy of it is a copy of the database.
    await connection.executeScript("PRAGMA wal_checkpoint(TRUNCATE)");
  } finally {
    await connection.dispose();
  }
  return done;
}
