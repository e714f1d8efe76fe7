/** What is held of a student: handed to them without what they may not know yet, and erased without loss of results. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { exportPersonData } from "@/lib/data/export-person-data";
import { findViewer } from "@/lib/data/find-viewer";
import { getReviewGrid } from "@/lib/data/get-review-grid";
import { listTrail } from "@/lib/data/list-trail";
import { getDatabase } from "@/lib/data/store/database";
import { createPerson } from "@/lib/workflows/create-person";
import { erasePerson } from "@/lib/workflows/erase-person";
import { resetPassword } from "@/lib/workflows/reset-password";
import { setPersonActive } from "@/lib/workflows/set-person-active";
import { createTestDatabase, type TestDatabase } from "@/tests/support/database";
import { buildSchool, PASSWORD, type School } from "@/tests/support/school";
import { SECRETS, SEEN } from "@/tests/support/school-marks";

let database: TestDatabase;
let school: School;
beforeEach(async () => {
  database = await createTestDatabase();
  school = await buildSchool();
});
afterEach(() => database.remove());

const KEPT = ["Sitting", "SittingEvent", "HandIn", "Result", "Release", "Enrolment", "TrailEntry"];
async function countKept(): Promise<unknown[]> {
  return Promise.all(
    KEPT.map(async (name) => [
      name,
      await getDatabase().$queryRawUnsafe(`SELECT COUNT(*) AS n FROM "${name}"`),
    ]),
  );
}

describe("the data of a student", () => {
  it("hold their own work, and points only where the debrief is released", async () => {
    const ada = await exportPersonData(school.ada, school.ada.userId);
    expect(ada.sittings.map(({ stone, result, log }) => [stone, result, log.length])).toEqual([
      ["T-1", null, 2],
      ["T-2", null, 2],
    ]);
    expect(JSON.stringify(ada)).toContain(SECRETS.ada[0]);
    const ben = await exportPersonData(school.ben, school.ben.userId);
    expect(ben.sittings[0]?.result?.lines.length).toBeGreaterThan(0);
    const forbidden = [...SECRETS.decoy, ...SECRETS.cyd];
    // Ben's debrief is released: its lines name what was found and what was overlooked.
    for (const secret of SECRETS.reference) expect(JSON.stringify(ada)).not.toContain(secret);
    for (const secret of [...forbidden, ...SECRETS.ben]) expect(JSON.stringify(ada)).not.toContain(secret);
    for (const secret of [...forbidden, ...SECRETS.ada]) expect(JSON.stringify(ben)).not.toContain(secret);
  });
});

describe("an erased student", () => {
  it("is nobody: name, sign-in name, notes and sessions are gone, and every result stays", async () => {
    const { ada, director, iris, exerciseId, adaScored } = school;
    await getDatabase().benchNote.create({
      data: { sittingId: adaScored, authorId: iris.userId, text: "well done, Ada" },
    });
    await getDatabase().signInAttempt.create({ data: { login: "ada", address: "a", succeeded: false } });
    const before = await countKept();
    const totals = (await getReviewGrid(iris, exerciseId)).cells.map(({ total }) => total);
    const { stoneIds, trayId } = school;
    const evidence = { ...SEEN, cut: "round-brilliant" };
    await getDatabase().stoneCheck.create({
      data: { trayId, stoneId: stoneIds[0], byId: ada.userId, evidence },
    });
    expect((await exportPersonData(ada, ada.userId)).checks).toHaveLength(1);
    await erasePerson(director, { userId: ada.userId });
    expect(await getDatabase().stoneCheck.count({ where: { byId: ada.userId } })).toBe(0);
    const after = await countKept();
    expect(after.slice(0, -1)).toEqual(before.slice(0, -1));
    expect((await getReviewGrid(iris, exerciseId)).cells.map(({ total }) => total).sort()).toEqual(
      totals.sort(),
    );
    expect(await findViewer(ada.userId, 1)).toBeNull();
    for (const name of [...KEPT, "User", "SignInAttempt", "BenchNote", "AccessLink"]) {
      const rows = await getDatabase().$queryRawUnsafe(`SELECT * FROM "${name}"`);
      const text = JSON.stringify(rows, (_key, value) => (typeof value === "bigint" ? String(value) : value));
      expect(text, name).not.toMatch(/Ada Student|"ada"|well done/);
    }
    const { rows } = (await listTrail(director, { page: 1 })) as {
      rows: { actorName: string; action: string }[];
    };
    expect(rows[0]).toMatchObject({ actorName: director.name, action: "erase-person" });
    await createPerson(director, { login: "ada", name: "Another", role: "student", password: PASSWORD });
  });

  it("is never brought back, by no door", async () => {
    const { ada, director, iris } = school;
    const { userId } = ada;
    await erasePerson(director, { userId });
    await expect(erasePerson(director, { userId })).rejects.toMatchObject({ code: "conflict" });
    await expect(setPersonActive(director, { userId, active: true })).rejects.toMatchObject({
      code: "conflict",
    });
    await expect(resetPassword(director, { userId, password: PASSWORD })).rejects.toMatchObject({
      code: "conflict",
    });
    await expect(
      getDatabase().$executeRawUnsafe(`UPDATE "User" SET "name" = 'Ada' WHERE "id" = '${userId}'`),
    ).rejects.toThrow();
    await expect(erasePerson(director, { userId: iris.userId })).rejects.toMatchObject({ code: "conflict" });
  });

  it("opens no more of the trail than the name of who is erased", async () => {
    const { ada, ben, director } = school;
    const update = (set: string, where: string) =>
      getDatabase().$executeRawUnsafe(`UPDATE "TrailEntry" SET ${set} WHERE ${where}`);
    const of = (id: string) => `"actorId" = '${id}'`;
    await expect(update(`"actorName" = 'Erased student'`, of(ada.userId))).rejects.toThrow();
    await erasePerson(director, { userId: ada.userId });
    for (const [set, id] of [
      [`"actorName" = 'Somebody'`, ada.userId],
      [`"action" = 'other'`, ada.userId],
      [`"detail" = 'other'`, ada.userId],
      [`"actorName" = 'Erased student'`, ben.userId],
      [`"detail" = ''`, ben.userId],
    ] as const) {
      await expect(update(set, of(id)), set).rejects.toThrow();
    }
    await expect(getDatabase().$executeRawUnsafe(`DELETE FROM "TrailEntry"`)).rejects.toThrow();
  });
});
