import "server-only";
import { existsSync } from "node:fs";
import { copyFile, mkdir, readdir, readFile, rename, rm, writeFile } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import { z } from "zod";
import { AppError } from "@/lib/base/app-error";
import {
  BACKUP_FORMAT,
  BACKUP_PARTS,
  type BackupManifest,
  BackupManifestSchema,
  digestFile,
  inspectDatabase,
  listFilesBelow,
  queryFile,
} from "@/lib/workflows/command-line/backup-manifest";

export interface BackupSource {
  /** Path of the SQLite file; a server may be writing to it. */
  readonly databaseFile: string;
  /** Folder of the photographs; it need not be there. */
  readonly filesFolder: string | null;
}

/** Tables to which rows are only ever added: a copy holds no fewer than there were when it was begun. */
const GROWING = ["TrailEntry", "SittingEvent", "HandIn", "Reference"] as const;

const refuse = (path: string, message: string) =>
  new AppError("bad-input", "The backup was not written.", [{ path, message }]);

async function countGrowing(file: string): Promise<number[]> {
  const answers = await queryFile(file, ...GROWING.map((name) => `SELECT COUNT(*) FROM "${name}"`));
  return answers.map((rows) => Number(rows[0]?.[0]));
}

async function readProgramVersion(): Promise<string> {
  const text = await readFile(join(process.cwd(), "package.json"), "utf8");
  return z.object({ version: z.string() }).parse(JSON.parse(text)).version;
}

/** The photographs go after the database: they are written before the rows that name them. */
async function copyFiles(from: string | null, to: string): Promise<BackupManifest["files"]> {
  if (from === null) return [];
  const files: BackupManifest["files"] = [];
  for (const path of await listFilesBelow(from)) {
    const target = join(to, path);
    await mkdir(dirname(target), { recursive: true });
    await copyFile(join(from, path), target);
    files.push({ path, ...(await digestFile(target)) });
  }
  return files;
}

async function writeParts(
  { databaseFile, filesFolder }: BackupSource,
  folder: string,
): Promise<BackupManifest> {
  const before = await countGrowing(databaseFile);
  const database = join(folder, BACKUP_PARTS.database);
  // One read transaction of SQLite's own: what is written meanwhile is in none or all of it, the write-ahead log too.
  await queryFile(databaseFile, `VACUUM INTO '${database.replaceAll("'", "''")}'`);
  const facts = await inspectDatabase(database);
  GROWING.forEach((name, at) => {
    if ((facts.tables[name] ?? -1) < (before[at] ?? 0))
      throw refuse(name, "the copy holds fewer rows than there are");
  });
  if (facts.faults.length > 0) throw refuse(BACKUP_PARTS.database, facts.faults.slice(0, 5).join("; "));
  const manifest: BackupManifest = {
    format: BACKUP_FORMAT,
    version: 1,
    program: await readProgramVersion(),
    madeAt: new Date().toISOString(),
    migrations: facts.migrations,
    tables: facts.tables,
    database: await digestFile(database),
    files: await copyFiles(filesFolder, join(folder, BACKUP_PARTS.files)),
  };
  await writeFile(join(folder, BACKUP_PARTS.manifest), `${JSON.stringify(manifest, null, 2)}\n`);
  return BackupManifestSchema.parse(manifest);
}

/**
 * Writes a backup into a new or empty folder while the server runs: a consistent copy of the database, the
 * photographs, and a manifest of counts and checksums. The copy is opened and looked through before the folder gets
 * its name, so that a folder of that name is a whole backup. Throws AppError `bad-input` for a folder that holds
 * something, `not-set-up` where there is no database.
 */
export async function writeBackup(source: BackupSource, to: string): Promise<BackupManifest> {
  if (!existsSync(source.databaseFile)) {
    throw new AppError("not-set-up", "There is no database to back up.", [
      { path: "DATABASE_URL", message: `there is no file ${source.databaseFile}` },
    ]);
  }
  const folder = resolve(to);
  if (existsSync(folder) && (await readdir(folder)).length > 0) throw refuse(to, "is not empty");
  await mkdir(dirname(folder), { recursive: true });
  const half = join(dirname(folder), `.${basename(folder)}.half-${process.pid}`);
  await rm(half, { recursive: true, force: true });
  await mkdir(half);
  try {
    const manifest = await writeParts(source, half);
    await rm(folder, { recursive: true, force: true });
    await rename(half, folder);
    return manifest;
  } catch (thrown) {
    await rm(half, { recursive: true, force: true });
    throw thrown;
  }
}
