/** What is written once is refused a change by the database itself, whatever the program does. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { getDatabase } from "@/lib/data/store/database";
import { createTestDatabase, type TestDatabase } from "@/tests/support/database";
import { buildSchool, type School } from "@/tests/support/school";

let database: TestDatabase;
let school: School;
beforeAll(async () => {
  database = await createTestDatabase();
  school = await buildSchool();
});
afterAll(() => database.remove());

const KEPT = [
  ["Reference", "note"],
  ["RubricVersion", "version"],
  ["SittingEvent", "atMs"],
  ["HandIn", "lastSeq"],
  ["BenchNote", "text"],
  ["TrailEntry", "detail"],
] as const;

describe.each(KEPT)("%s", (table, column) => {
  it.each([
    ["UPDATE", `UPDATE "${table}" SET "${column}" = "${column}"`],
    ["DELETE", `DELETE FROM "${table}"`],
    ["REPLACE", `INSERT OR REPLACE INTO "${table}" SELECT * FROM "${table}"`],
  ])("refuses %s", async (_what, sql) => {
    const count = () => getDatabase().$queryRawUnsafe(`SELECT COUNT(*) AS n FROM "${table}"`);
    const before = await count();
    expect(before).not.toEqual([{ n: 0n }]);
    await expect(getDatabase().$executeRawUnsafe(sql)).rejects.toThrow(/never|append-only|frozen/);
    expect(await count()).toEqual(before);
  });
});

describe("the connection", () => {
  it("has foreign keys on, a write-ahead log, and commits that are on disk", async () => {
    const read = async (name: string) =>
      Object.values((await getDatabase().$queryRawUnsafe<object[]>(`PRAGMA ${name}`))[0] ?? {})[0];
    expect(Number(await read("foreign_keys"))).toBe(1);
    expect(await read("journal_mode")).toBe("wal");
    // 2 is FULL: sqlite.org, Pragma statements, synchronous.
    expect(Number(await read("synchronous"))).toBe(2);
  });

  it("refuses a second current result of a hand-in and a second release in force", async () => {
    const result = await getDatabase().result.findFirstOrThrow({ where: { isCurrent: true } });
    const { id: _id, result: body, detail, ...rest } = result;
    await expect(
      getDatabase().result.create({ data: { ...rest, result: body ?? {}, detail: detail ?? {} } }),
    ).rejects.toMatchObject({ code: "P2002" });
    await expect(
      getDatabase().release.create({
        data: { sittingId: school.benReleased, releasedById: school.iris.userId },
      }),
    ).rejects.toMatchObject({ code: "P2002" });
  });
});
