/** The committed migrations, applied by the program's own runner, and what the database keeps for good. */
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { applyMigrations } from "@/lib/data/apply-migrations";
import { openConnection } from "@/lib/data/store/open-connection";
import { readModels } from "@/tests/support/read-models";

const MIGRATIONS = join(import.meta.dirname, "../../prisma/migrations");

let folder: string;
let migrations: string;
let url: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "loupework-migrations-"));
  migrations = join(folder, "migrations");
  cpSync(MIGRATIONS, migrations, { recursive: true });
  url = `file:${join(folder, "test.db")}`;
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function addMigration(name: string, sql: string): void {
  mkdirSync(join(migrations, name), { recursive: true });
  writeFileSync(join(migrations, name, "migration.sql"), sql);
}

async function query(sql: string): Promise<unknown[][]> {
  const connection = await openConnection(url).connect();
  try {
    return (await connection.queryRaw({ sql, args: [], argTypes: [] })).rows;
  } finally {
    await connection.dispose();
  }
}

describe("the runner", () => {
  it("applies each migration once, in order of name, and records it as `prisma migrate` does", async () => {
    addMigration("20990101000000_later", `CREATE TABLE "Later" ("id" TEXT PRIMARY KEY);`);
    const first = await applyMigrations(url, migrations);
    expect(first.at(-1)).toBe("20990101000000_later");
    expect(await applyMigrations(url, migrations)).toEqual([]);
    const rows = await query(`SELECT migration_name, checksum, finished_at IS NOT NULL, rolled_back_at,
      applied_steps_count, length(id) FROM _prisma_migrations ORDER BY migration_name`);
    expect(rows.map(([name]) => name)).toEqual(first);
    for (const [, checksum, finished, rolledBack, steps, idLength] of rows) {
      expect(checksum).toMatch(/^[0-9a-f]{64}$/);
      expect([finished, rolledBack, steps, idLength]).toEqual([1, null, 1, 36]);
    }
  });

  it("refuses a database whose migration was edited afterwards, and writes nothing", async () => {
    await applyMigrations(url, migrations);
    const [name = ""] = (await query("SELECT migration_name FROM _prisma_migrations"))[0] as [string];
    addMigration(name, "-- other");
    addMigration("20990101000000_later", `CREATE TABLE "Later" ("id" TEXT PRIMARY KEY);`);
    await expect(applyMigrations(url, migrations)).rejects.toMatchObject({ code: "not-set-up" });
    expect(await query("SELECT name FROM sqlite_master WHERE name = 'Later'")).toEqual([]);
  });

  it("refuses a database that is newer than the program", async () => {
    addMigration("20990101000000_later", `CREATE TABLE "Later" ("id" TEXT PRIMARY KEY);`);
    await applyMigrations(url, migrations);
    await expect(applyMigrations(url, MIGRATIONS)).rejects.toThrow(/20990101000000_later/);
  });

  it("rolls a failing migration back whole and can go on once it is mended", async () => {
    addMigration("20990101000000_bad", `CREATE TABLE "Half" ("id" TEXT); INSERT INTO "Nowhere" VALUES (1);`);
    await expect(applyMigrations(url, migrations)).rejects.toThrow(/Nowhere/);
    expect(await query("SELECT name FROM sqlite_master WHERE name = 'Half'")).toEqual([]);
    addMigration("20990101000000_bad", `CREATE TABLE "Half" ("id" TEXT);`);
    expect(await applyMigrations(url, migrations)).toEqual(["20990101000000_bad"]);
  });

  it("rolls back a migration that leaves a row without its parent", async () => {
    addMigration(
      "20990101000000_orphan",
      `INSERT INTO "Tray" ("id", "name", "ownerId", "terms") VALUES ('t', 'n', 'nobody', '{}');`,
    );
    await expect(applyMigrations(url, migrations)).rejects.toThrow(/orphans/);
    expect(await query(`SELECT "id" FROM "Tray"`)).toEqual([]);
  });

  it("lets two runners start at once", async () => {
    const done = await Promise.all([applyMigrations(url, migrations), applyMigrations(url, migrations)]);
    expect(done.flat()).toEqual([...new Set(done.flat())]);
    expect(await applyMigrations(url, migrations)).toEqual([]);
  });

  it("says so when the migrations are not there", async () => {
    await expect(applyMigrations(url, join(folder, "none"))).rejects.toMatchObject({ code: "not-set-up" });
  });
});

describe("the model and the database", () => {
  it("have the same tables and columns", async () => {
    await applyMigrations(url, MIGRATIONS);
    const inDatabase = await query(`SELECT m.name, c.name, c."notnull" OR c.pk > 0 FROM sqlite_master m
      JOIN pragma_table_info(m.name) c WHERE m.type = 'table' AND m.name NOT LIKE '\\_%' ESCAPE '\\'
      AND m.name NOT LIKE 'sqlite%'`);
    const inModel = readModels().flatMap((model) =>
      model.fields.map(({ name, isRequired }) => [model.name, name, isRequired ? 1 : 0]),
    );
    const sorted = (rows: readonly unknown[][]) => rows.map((row) => row.join(" ")).sort();
    expect(sorted(inDatabase)).toEqual(sorted(inModel));
  });

  it("have the same unique keys, and those that hold for some rows only", async () => {
    await applyMigrations(url, MIGRATIONS);
    const rows = await query(`SELECT m.name, group_concat(i.name, ',') FROM sqlite_master m
      JOIN pragma_index_list(m.name) l JOIN pragma_index_info(l.name) i
      WHERE m.type = 'table' AND m.name NOT LIKE '\\_%' ESCAPE '\\' AND l."unique" AND l.origin = 'c'
      GROUP BY m.name, l.name`);
    const inModel = readModels().flatMap((model) => [
      ...model.unique.map((fields) => `${model.name} ${fields.join(",")}`),
    ]);
    expect(rows.map((row) => row.join(" ")).sort()).toEqual(
      [...inModel, "HandOut stoneId", "Release sittingId", "Rescore exerciseId", "Result handInId"].sort(),
    );
  });
});
