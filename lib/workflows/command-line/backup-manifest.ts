import "server-only";
import { createHash } from "node:crypto";
import { createReadStream } from "node:fs";
import { readdir, rm, stat } from "node:fs/promises";
import { join, relative, sep } from "node:path";
import { z } from "zod";
import { openConnection } from "@/lib/data/store/open-connection";

/** What a backup's folder holds, and how its parts are called. */
export const BACKUP_PARTS = { manifest: "manifest.json", database: "loupework.db", files: "files" } as const;
export const BACKUP_FORMAT = "loupework/backup";

const Sha256Schema = z.string().regex(/^[0-9a-f]{64}$/);

/** A path below the folder of files: no way leads out of it. */
const FilePathSchema = z
  .string()
  .min(1)
  .max(1000)
  .refine(
    (path) => path.split("/").every((step) => step !== "" && step !== "." && step !== ".."),
    "leads astray",
  );

export const BackupManifestSchema = z.strictObject({
  format: z.literal(BACKUP_FORMAT),
  version: z.literal(1),
  program: z.string(),
  madeAt: z.iso.datetime(),
  /** Applied to the database, in order. */
  migrations: z.array(z.strictObject({ name: z.string(), checksum: Sha256Schema })),
  /** Rows of each table. */
  tables: z.record(z.string(), z.int()),
  database: z.strictObject({ bytes: z.int(), sha256: Sha256Schema }),
  /** Photographs. */
  files: z.array(z.strictObject({ path: FilePathSchema, bytes: z.int(), sha256: Sha256Schema })),
});
export type BackupManifest = z.infer<typeof BackupManifestSchema>;

/** Runs a query on a SQLite file of its own connection. */
export async function queryFile(file: string, ...statements: readonly string[]): Promise<unknown[][][]> {
  const connection = await openConnection(`file:${file}`).connect();
  try {
    const answers: unknown[][][] = [];
    for (const sql of statements) {
      answers.push((await connection.queryRaw({ sql, args: [], argTypes: [] })).rows);
    }
    return answers;
  } finally {
    await connection.dispose();
  }
}

/** What a copy of the database says of itself. */
export interface DatabaseFacts {
  /** Empty for a sound one; else what SQLite found. */
  readonly faults: readonly string[];
  readonly migrations: BackupManifest["migrations"];
  readonly tables: BackupManifest["tables"];
}

/** Takes away the write-ahead log that looking in has opened; nothing was written, so it is empty. */
async function dropLog(file: string): Promise<void> {
  const left = await stat(`${file}-wal`).catch(() => null);
  if (left !== null && left.size > 0) throw new Error("a copy was written to while it was looked through");
  for (const end of ["-wal", "-shm"]) await rm(file + end, { force: true });
}

/** Opens a copy and looks it through: its pages, its foreign keys, its migrations and the rows of each table. */
export async function inspectDatabase(file: string): Promise<DatabaseFacts> {
  const [integrity = [], orphans = [], migrations = [], names = []] = await queryFile(
    file,
    "PRAGMA integrity_check",
    "SELECT COUNT(*) FROM pragma_foreign_key_check",
    `SELECT "migration_name", "checksum" FROM "_prisma_migrations"
     WHERE "finished_at" IS NOT NULL AND "rolled_back_at" IS NULL ORDER BY "migration_name"`,
    `SELECT "name" FROM sqlite_master WHERE "type" = 'table' AND "name" NOT LIKE 'sqlite_%' ORDER BY "name"`,
  );
  const tables = names.map(([name]) => String(name));
  const counts = await queryFile(file, ...tables.map((name) => `SELECT COUNT(*) FROM "${name}"`));
  await dropLog(file);
  const said = integrity.map(([line]) => String(line)).filter((line) => line !== "ok");
  const lost = Number(orphans[0]?.[0] ?? 0);
  return {
    faults: [...said, ...(lost === 0 ? [] : [`${lost} rows point at rows that are not there`])],
    migrations: migrations.map(([name, checksum]) => ({ name: String(name), checksum: String(checksum) })),
    tables: Object.fromEntries(tables.map((name, at) => [name, Number(counts[at]?.[0]?.[0])])),
  };
}

/** Size and SHA-256 of a file, read as a stream. */
export async function digestFile(file: string): Promise<{ bytes: number; sha256: string }> {
  const hash = createHash("sha256");
  for await (const chunk of createReadStream(file)) hash.update(chunk as Buffer);
  return { bytes: (await stat(file)).size, sha256: hash.digest("hex") };
}

/** Every file below a folder, by path with `/`, in order; none where there is no such folder. */
export async function listFilesBelow(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true }).catch((thrown: unknown) => {
    if (thrown instanceof Error && "code" in thrown && thrown.code === "ENOENT") return [];
    throw thrown;
  });
  return entries
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => relative(folder, join(parentPath, name)).split(sep).join("/"))
    .sort();
}
