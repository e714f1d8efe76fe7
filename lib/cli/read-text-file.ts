import { readFile } from "node:fs/promises";
import { AppError } from "@/lib/base/app-error";

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file",
  EISDIR: "is a folder, not a file",
  EACCES: "may not be read",
};

function refuse(path: string, message: string): AppError {
  return new AppError("bad-input", "A file could not be read; nothing was written.", [{ path, message }]);
}

/** The text of a UTF-8 file. Throws AppError `bad-input` with the file as the path when it cannot be read as one. */
export async function readTextFile(path: string): Promise<string> {
  let bytes: Buffer;
  try {
    bytes = await readFile(path);
  } catch (thrown) {
    const code = thrown instanceof Error && "code" in thrown ? String(thrown.code) : "";
    throw refuse(path, REASONS[code] ?? `could not be read (${code})`);
  }
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw refuse(path, "is not UTF-8 text");
  }
}
