/** A backup is made while somebody writes, and an empty place that it is restored to holds the same. */
import {
  appendFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { runCommandLine } from "@/lib/cli/run-command-line";
import { closeDatabase, getDatabase } from "@/lib/data/store/database";
import { writeTrail } from "@/lib/data/store/write-trail";
import { queryFile } from "@/lib/workflows/command-line/backup-manifest";
import { restoreBackup } from "@/lib/workflows/command-line/restore-backup";
import { writeBackup } from "@/lib/workflows/command-line/write-backup";
import { createTestDatabase, type TestDatabase } from "@/tests/support/database";
import { buildSchool } from "@/tests/support/school";

let database: TestDatabase;
let folder: string;
beforeEach(async () => {
  database = await createTestDatabase();
  await buildSchool();
  folder = mkdtempSync(join(tmpdir(), "loupework-backup-"));
  mkdirSync(join(folder, "photos/a"), { recursive: true });
  writeFileSync(join(folder, "photos/a/one.webp"), "a picture");
});
afterEach(async () => {
  await database.remove();
  rmSync(folder, { recursive: true, force: true });
});

const at = (...path: string[]) => join(folder, ...path);
const make = () => writeBackup({ databaseFile: database.file, filesFolder: at("photos") }, at("backup"));
const restore = (force = false) =>
  restoreBackup(at("backup"), { databaseFile: at("new/loupework.db"), filesFolder: at("new/photos"), force });

async function readAll(file: string): Promise<Record<string, unknown>> {
  const [names = []] = await queryFile(
    file,
    `SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'`,
  );
  const tables = names.map(([name]) => String(name));
  const rows = await queryFile(file, ...tables.map((name) => `SELECT * FROM "${name}" ORDER BY rowid`));
  return Object.fromEntries(tables.map((name, index) => [name, rows[index]]));
}

describe("a backup", () => {
  it("of a school, restored into an empty place, is the same in every table and file", async () => {
    const manifest = await make();
    await restore();
    await closeDatabase();
    const [before, after] = [await readAll(database.file), await readAll(at("new/loupework.db"))];
    expect(Object.keys(after)).toEqual(Object.keys(before));
    expect(Object.keys(after).length).toBeGreaterThan(15);
    expect(after).toEqual(before);
    expect(manifest.files.map(({ path }) => path)).toEqual(["a/one.webp"]);
    expect(readFileSync(at("new/photos/a/one.webp"), "utf8")).toBe("a picture");
    expect(readdirSync(at("backup")).sort()).toEqual(["files", "loupework.db", "manifest.json"]);
    // Triggers, too: what may never change may not change there.
    await expect(queryFile(at("new/loupework.db"), `DELETE FROM "TrailEntry"`)).rejects.toThrow();
  });

  it("made while writes go on holds whole transactions only, and all that were through when it began", async () => {
    let isOver = false;
    let through = 0;
    const write = async () => {
      while (!isOver) {
        await getDatabase().$transaction(async (transaction) => {
          const notes = ["pair-a", "pair-b"].map((action) => ({
            action,
            subjectKind: "t",
            subjectId: String(through),
          }));
          await writeTrail(transaction, null, notes[0] ?? { action: "", subjectKind: "", subjectId: "" });
          await writeTrail(transaction, null, notes[1] ?? { action: "", subjectKind: "", subjectId: "" });
        });
        through += 1;
        await new Promise((done) => setImmediate(done));
      }
    };
    const writing = write();
    while (through < 20) await new Promise((done) => setTimeout(done, 5));
    const atLeast = through;
    await make();
    isOver = true;
    await writing;
    await restore();
    const [pairs = []] = await queryFile(
      at("new/loupework.db"),
      `SELECT "action", COUNT(*) FROM "TrailEntry" WHERE "action" LIKE 'pair-%' GROUP BY "action" ORDER BY 1`,
    );
    const counts = pairs.map(([, count]) => Number(count));
    expect(counts).toHaveLength(2);
    expect(counts[0]).toBe(counts[1]);
    expect(counts[0]).toBeGreaterThanOrEqual(atLeast);
    expect(counts[0]).toBeLessThanOrEqual(through);
  });

  it("is not put over anything, unless by force, and then what was there is kept aside", async () => {
    await make();
    mkdirSync(at("new"));
    writeFileSync(at("new/loupework.db"), "precious");
    await expect(restore()).rejects.toMatchObject({ code: "bad-input" });
    expect(readFileSync(at("new/loupework.db"), "utf8")).toBe("precious");
    const { movedAside } = await restore(true);
    expect(movedAside.map((path) => readFileSync(path, "utf8"))).toEqual(["precious"]);
    await expect(make()).rejects.toMatchObject({ faults: [{ path: at("backup"), message: "is not empty" }] });
  });

  const change = (edit: (manifest: Record<string, unknown>) => void) => () => {
    const manifest = JSON.parse(readFileSync(at("backup/manifest.json"), "utf8"));
    edit(manifest);
    writeFileSync(at("backup/manifest.json"), JSON.stringify(manifest));
  };
  it.each([
    ["without its manifest", () => rmSync(at("backup/manifest.json")), /holds no manifest/],
    ["with half a manifest", () => writeFileSync(at("backup/manifest.json"), "{"), /is damaged/],
    ["with a byte too many", () => appendFileSync(at("backup/loupework.db"), "x"), /checksum is another/],
    ["without a photograph", () => rmSync(at("backup/files/a/one.webp")), /is missing from the backup/],
    [
      "whose files lead astray",
      change((one) => Object.assign(one, { files: [{ path: "../x", bytes: 1, sha256: "0".repeat(64) }] })),
      /leads astray/,
    ],
    [
      "of a newer program",
      change((one) => (one.migrations as unknown[]).push({ name: "2099_later", checksum: "0".repeat(64) })),
      /newer than this program: it has 2099_later/,
    ],
    ["with other counts", change((one) => Object.assign(one.tables as object, { User: 1 })), /other rows/],
  ])("%s is refused and writes nothing", async (_what, damage, words) => {
    await make();
    damage();
    const thrown = (await restore().catch((error: unknown) => error)) as {
      faults: { path: string; message: string }[];
    };
    expect(thrown.faults.map(({ path, message }) => `${path}: ${message}`).join()).toMatch(words);
    expect(existsSync(at("new/loupework.db"))).toBe(false);
  });
});

describe("the commands", () => {
  it("back up and restore, and say what they did", async () => {
    const backup = await runCommandLine(["backup", "--to", at("b")]);
    expect(backup).toMatchObject({ status: 0, stderr: "" });
    const restored = await runCommandLine(["restore", "--from", at("b"), "--to", at("c.db")]);
    expect(restored).toMatchObject({ status: 0, stderr: "" });
    expect(JSON.parse(restored.stdout).tables).toEqual(JSON.parse(backup.stdout).tables);
    expect(await runCommandLine(["restore", "--from", at("b"), "--to", at("c.db")])).toMatchObject({
      status: 2,
      stdout: "",
    });
    expect(await runCommandLine(["restore", "--from", at("b"), "--force=x"])).toMatchObject({ status: 2 });
  });
});
