import "server-only";
import { existsSync } from "node:fs";
import { copyFile, mkdir, mkdtemp, readdir, readFile, rename, rm } from "node:fs/promises";
import { dirname, join, resolve } from "node:path";
import { isDeepStrictEqual } from "node:util";
import { AppError } from "@/lib/base/app-error";
import { listMigrations } from "@/lib/data/apply-migrations";
import { toFaults } from "@/lib/plot/to-faults";
import {
  BACKUP_PARTS,
  type BackupManifest,
  BackupManifestSchema,
  digestFile,
  inspectDatabase,
  listFilesBelow,
} from "@/lib/workflows/command-line/backup-manifest";

export interface RestoreTarget {
  readonly databaseFile: string;
  readonly filesFolder: string | null;
  /** Moves what is there out of the way instead of refusing. */
  readonly force: boolean;
}

/** What stands beside a SQLite file while it is open, or after a crash. */
const COMPANIONS = ["", "-wal", "-shm"] as const;

const refuse = (path: string, message: string) =>
  new AppError("bad-input", "Nothing was restored.", [{ path, message }]);

async function readManifest(from: string): Promise<BackupManifest> {
  const text = await readFile(join(from, BACKUP_PARTS.manifest), "utf8").catch(() => {
    throw refuse(from, `holds no ${BACKUP_PARTS.manifest}: it is no backup, or not a whole one`);
  });
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    throw refuse(BACKUP_PARTS.manifest, "is damaged");
  }
  const parsed = BackupManifestSchema.safeParse(json);
  if (!parsed.success) throw new AppError("bad-input", "Nothing was restored.", toFaults(parsed.error));
  return parsed.data;
}

/** A backup of a later program has migrations that this one lacks: it could not be read. */
function requireKnownMigrations({ migrations, program }: BackupManifest): void {
  const known = new Map(
    listMigrations(join(process.cwd(), "prisma/migrations")).map(({ name, checksum }) => [name, checksum]),
  );
  const odd = migrations.filter(({ name, checksum }) => known.get(name) !== checksum);
  if (odd.length === 0) return;
  throw refuse(
    BACKUP_PARTS.manifest,
    `was made by version ${program}, newer than this program: it has ${odd.map(({ name }) => name).join(", ")}`,
  );
}

async function requireSame(
  file: string,
  path: string,
  { bytes, sha256 }: { bytes: number; sha256: string },
): Promise<void> {
  const found = await digestFile(file).catch(() => {
    throw refuse(path, "is missing from the backup");
  });
  if (found.bytes !== bytes || found.sha256 !== sha256)
    throw refuse(path, "is damaged: its checksum is another");
}

/** Holds every part of a backup against its manifest. */
async function requireWhole(from: string, manifest: BackupManifest): Promise<void> {
  await requireSame(join(from, BACKUP_PARTS.database), BACKUP_PARTS.database, manifest.database);
  for (const { path, ...digest } of manifest.files) {
    const name = `${BACKUP_PARTS.files}/${path}`;
    await requireSame(join(from, name), name, digest);
  }
}

/** Opens the copy before it takes its place, and compares its rows with the manifest's. */
async function requireSound(file: string, manifest: BackupManifest): Promise<void> {
  const { faults, tables, migrations } = await inspectDatabase(file);
  if (faults.length > 0) throw refuse(BACKUP_PARTS.database, faults.slice(0, 5).join("; "));
  if (!isDeepStrictEqual(tables, manifest.tables) || !isDeepStrictEqual(migrations, manifest.migrations)) {
    throw refuse(BACKUP_PARTS.database, "holds other rows or migrations than the manifest says");
  }
}

async function isTaken(
  { databaseFile, filesFolder }: RestoreTarget,
  manifest: BackupManifest,
): Promise<string | null> {
  const file = COMPANIONS.map((end) => databaseFile + end).find(existsSync);
  if (file !== undefined) return file;
  if (filesFolder === null || manifest.files.length === 0) return null;
  return (await listFilesBelow(filesFolder)).length > 0 ? filesFolder : null;
}

/** Moves what stands in the way aside, under a name that says so; nothing is deleted. */
async function moveAside(
  { databaseFile, filesFolder }: RestoreTarget,
  movesFiles: boolean,
): Promise<string[]> {
  const stamp = new Date().toISOString().replace(/[:.]/g, "-");
  const paths = [
    ...COMPANIONS.map((end) => databaseFile + end),
    ...(movesFiles && filesFolder ? [filesFolder] : []),
  ];
  const moved: string[] = [];
  for (const path of paths) {
    if (!existsSync(path)) continue;
    const aside = `${path}.before-restore-${stamp}`;
    await rename(path, aside);
    moved.push(aside);
  }
  return moved;
}

/**
 * Puts a backup in place of nothing: the database and the photographs, after every part was held against the manifest
 * and the copy was opened and counted. Throws AppError `bad-input`, with nothing written, for what is no backup, a
 * damaged one, one of a newer program, and a place that holds something (with `force` that is moved aside).
 */
export async function restoreBackup(
  from: string,
  target: RestoreTarget,
): Promise<{ manifest: BackupManifest; movedAside: string[] }> {
  const source = resolve(from);
  const manifest = await readManifest(source);
  requireKnownMigrations(manifest);
  if (manifest.files.length > 0 && target.filesFolder === null)
    throw refuse("--files", "is needed: the backup holds photographs");
  const taken = await isTaken(target, manifest);
  if (taken !== null && !target.force) {
    throw refuse(taken, "is there already; stop the server and add --force to move it aside");
  }
  await requireWhole(source, manifest);
  await mkdir(dirname(resolve(target.databaseFile)), { recursive: true });
  const half = await mkdtemp(join(dirname(resolve(target.databaseFile)), ".restore-"));
  try {
    await copyFile(join(source, BACKUP_PARTS.database), join(half, "database"));
    await requireSound(join(half, "database"), manifest);
    for (const { path } of manifest.files) {
      await mkdir(dirname(join(half, "files", path)), { recursive: true });
      await copyFile(join(source, BACKUP_PARTS.files, path), join(half, "files", path));
    }
    const movedAside = target.force ? await moveAside(target, manifest.files.length > 0) : [];
    if (target.filesFolder !== null && manifest.files.length > 0) {
      await moveFiles(join(half, "files"), target.filesFolder);
    }
    await rename(join(half, "database"), target.databaseFile);
    return { manifest, movedAside };
  } finally {
    await rm(half, { recursive: true, force: true });
  }
}

/** Moves the files into their folder, which is empty or not there; across devices they are copied. */
async function moveFiles(from: string, to: string): Promise<void> {
  await mkdir(to, { recursive: true });
  for (const name of await readdir(from)) {
    await rename(join(from, name), join(to, name)).catch(async () => {
      for (const path of await listFilesBelow(join(from, name))) {
        await mkdir(dirname(join(to, name, path)), { recursive: true });
        await copyFile(join(from, name, path), join(to, name, path));
      }
    });
  }
}
