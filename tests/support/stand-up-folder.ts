import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll } from "vitest";

/** A folder for the files of one test file, gone after it; `put` writes a file into it and says where that is. */
export function standUpFolder(): {
  folder: string;
  put: (name: string, content: string | Uint8Array) => string;
} {
  const folder = mkdtempSync(join(tmpdir(), "loupework-test-"));
  afterAll(() => rmSync(folder, { recursive: true }));
  const put = (name: string, content: string | Uint8Array) => {
    const path = join(folder, name);
    writeFileSync(path, content);
    return path;
  };
  return { folder, put };
}
