/**
 * A database of its own for a test: a copy of a template to which the migrations were applied once, a real SQLite
 * file in the machine's folder for temporary files.
 */
import { createHash, randomUUID } from "node:crypto";
import { copyFileSync, cpSync, existsSync, mkdirSync, mkdtempSync, renameSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { applyMigrations, listMigrations } from "@/lib/data/apply-migrations";
import { closeDatabase, getDatabase } from "@/lib/data/store/database";

const MIGRATIONS = join(import.meta.dirname, "../../prisma/migrations");

/** The path of the template, made if it is not there yet; named after the migrations in it. */
async function ensureTemplate(): Promise<string> {
  const hash = createHash("sha256");
  for (const { name, checksum } of listMigrations(MIGRATIONS)) hash.update(`${name} ${checksum}\n`);
  const folder = join(tmpdir(), "loupework-templates");
  const template = join(folder, `${hash.digest("hex").slice(0, 16)}.db`);
  if (existsSync(template)) return template;
  mkdirSync(folder, { recursive: true });
  const half = join(folder, `${randomUUID()}.db`);
  await applyMigrations(`file:${half}`, MIGRATIONS);
  renameSync(half, template);
  for (const rest of ["-wal", "-shm"]) rmSync(half + rest, { force: true });
  return template;
}

/** Copies the database that this process points at to a file that holds all of it, and closes it. */
export async function keepSnapshot(database: TestDatabase): Promise<string> {
  await getDatabase().$queryRawUnsafe("PRAGMA wal_checkpoint(TRUNCATE)");
  await closeDatabase();
  const snapshot = `${database.file}.snapshot`;
  copyFileSync(database.file, snapshot);
  return snapshot;
}

export interface TestDatabase {
  readonly url: string;
  readonly file: string;
  /** Closes the database and removes its files. */
  remove(): Promise<void>;
}

/** Photographs lie beside the database; a copy of the one goes with a copy of the other. */
function copyFiles(from: string, to: string): void {
  const files = join(from, "loupework-files");
  if (existsSync(files)) cpSync(files, join(to, "loupework-files"), { recursive: true });
}

/** Makes a fresh database, from a snapshot if one is given, and points this process at it. */
export async function createTestDatabase(snapshot?: string): Promise<TestDatabase> {
  await closeDatabase();
  const folder = mkdtempSync(join(tmpdir(), "loupework-test-"));
  const file = join(folder, "test.db");
  copyFileSync(snapshot ?? (await ensureTemplate()), file);
  if (snapshot !== undefined) copyFiles(dirname(snapshot), folder);
  process.env.DATABASE_URL = `file:${file}`;
  return {
    url: `file:${file}`,
    file,
    remove: async () => {
      await closeDatabase();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
