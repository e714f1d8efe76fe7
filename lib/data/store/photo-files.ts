/** Photographs as files: one folder, random names, each written whole before it has its name. */
import { randomUUID } from "node:crypto";
import { mkdir, open, readFile, rename, rm } from "node:fs/promises";
import { join } from "node:path";
import { getFilesFolder } from "@/lib/data/store/files-folder";
import type { PhotoSize } from "@/lib/plot/stone-photo";

const FileNameSchema = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

function toPath(file: string, size: PhotoSize): string {
  // The name is our own; nothing else may ever become a path.
  if (!FileNameSchema.test(file)) throw new Error("no name of a photograph");
  return join(getFilesFolder(), "photos", `${file}-${size}.jpg`);
}

/** Writes under a name that nobody reads, forces it to disk, then gives it its name: a reader sees all or nothing. */
async function writeWhole(path: string, bytes: Uint8Array): Promise<void> {
  const half = `${path}.${randomUUID()}.half`;
  try {
    const handle = await open(half, "wx", 0o640);
    try {
      await handle.writeFile(bytes);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(half, path);
  } catch (thrown) {
    await rm(half, { force: true });
    throw thrown;
  }
}

/** Keeps both sizes of a photograph and gives the random name that they go by. */
export async function writePhotoFiles(pictures: Readonly<Record<PhotoSize, Uint8Array>>): Promise<string> {
  const file = randomUUID();
  await mkdir(join(getFilesFolder(), "photos"), { recursive: true });
  try {
    await writeWhole(toPath(file, "small"), pictures.small);
    await writeWhole(toPath(file, "large"), pictures.large);
  } catch (thrown) {
    await removePhotoFiles(file);
    throw thrown;
  }
  return file;
}

/** The bytes of one size; null where the file is gone, as after a restore without the folder. */
export async function readPhotoFile(file: string, size: PhotoSize): Promise<Uint8Array<ArrayBuffer> | null> {
  try {
    return new Uint8Array(await readFile(toPath(file, size)));
  } catch (thrown) {
    if ((thrown as NodeJS.ErrnoException).code === "ENOENT") return null;
    throw thrown;
  }
}

/** Removes both sizes; what is not there is no fault. */
export async function removePhotoFiles(file: string): Promise<void> {
  await rm(toPath(file, "small"), { force: true });
  await rm(toPath(file, "large"), { force: true });
}
