/** Where each stone is: handed out and taken back, never in two places. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { getOverview } from "@/lib/data/get-overview";
import { getScannedStone } from "@/lib/data/get-scanned-stone";
import { getTray } from "@/lib/data/get-tray";
import { listHolders } from "@/lib/data/list-holders";
import { listOut } from "@/lib/data/list-out";
import { getDatabase } from "@/lib/data/store/database";
import { toScanAddress, toStoneCode } from "@/lib/plot/stone-code";
import { handOutStones } from "@/lib/workflows/hand-out-stones";
import { takeBackStones } from "@/lib/workflows/take-back-stones";
import { createTestDatabase, type TestDatabase } from "@/tests/support/database";
import { buildSchool, type School } from "@/tests/support/school";

let database: TestDatabase;
let school: School;
beforeAll(async () => {
  database = await createTestDatabase();
  school = await buildSchool();
});
afterAll(() => database.remove());

const toAda = () => ({ kind: "student" as const, studentId: school.ada.userId });
const seat = { kind: "seat" as const, seat: "Bench 4" };

describe("hand-outs", () => {
  it("go to a student or a seat, several at once, and are seen everywhere", async () => {
    const { iris, trayId, stoneIds } = school;
    const dueBackAt = new Date(Date.now() - 60_000).toISOString();
    await handOutStones(iris, { stoneIds: [...stoneIds], to: toAda(), dueBackAt, note: "careful" });
    expect(await listOut(iris)).toMatchObject([
      { label: "T-1", holder: "Ada Student", isSeat: false, isOverdue: true, note: "careful" },
      { label: "T-2", holder: "Ada Student", handedOutBy: "Iris Instructor" },
    ]);
    expect((await getTray(school.otto, trayId)).stones.map(({ out }) => out?.holder)).toEqual([
      "Ada Student",
      "Ada Student",
    ]);
    expect(await getOverview(iris)).toMatchObject({ out: 2, overdue: 2 });
    expect(await takeBackStones(school.otto, { stoneIds: [...stoneIds] })).toEqual({ takenBack: 2 });
    expect(await listOut(iris)).toEqual([]);
    const [row] = await getDatabase().handOut.findMany();
    expect(row).toMatchObject({ returnedById: school.otto.userId });
  });

  it("are all or none: one stone that is out refuses the rest, and says with whom it is", async () => {
    const { iris, otto, stoneIds } = school;
    await handOutStones(iris, { stoneIds: [stoneIds[0]], to: seat, dueBackAt: null });
    await expect(
      handOutStones(otto, { stoneIds: [stoneIds[1], stoneIds[0]], to: seat, dueBackAt: null }),
    ).rejects.toMatchObject({
      code: "conflict",
      message: "Nothing was handed out: T-1 is with Bench 4 already, handed out by Iris Instructor.",
    });
    expect(await listOut(iris)).toHaveLength(1);
    await takeBackStones(iris, { stoneIds: [stoneIds[0]] });
  });

  it("of two people at once the second is told", async () => {
    const { iris, otto, stoneIds } = school;
    const input = { stoneIds: [stoneIds[0]], to: seat, dueBackAt: null };
    const answers = await Promise.allSettled(
      Array.from({ length: 6 }, (_, i) => handOutStones(i % 2 === 0 ? iris : otto, input)),
    );
    expect(answers.filter(({ status }) => status === "fulfilled")).toHaveLength(1);
    for (const answer of answers) {
      if (answer.status === "rejected") expect(answer.reason).toMatchObject({ code: "conflict" });
    }
    expect(await getDatabase().handOut.count({ where: { stoneId: stoneIds[0], returnedAt: null } })).toBe(1);
    await takeBackStones(iris, { stoneIds: [stoneIds[0]] });
  });

  it("the database itself refuses a stone in two places", async () => {
    const data = { stoneId: school.stoneIds[0], handedOutById: school.iris.userId, seat: "A" };
    await getDatabase().handOut.create({ data });
    await expect(getDatabase().handOut.create({ data: { ...data, seat: "B" } })).rejects.toThrow();
    await takeBackStones(school.iris, { stoneIds: [school.stoneIds[0]] });
  });

  it("go to nobody of another's section, to no staff, and to no account that ended", async () => {
    const { iris, otto, cyd, director, ben, stoneIds } = school;
    const give = (viewer: typeof iris, studentId: string) =>
      handOutStones(viewer, { stoneIds: [stoneIds[0]], to: { kind: "student", studentId }, dueBackAt: null });
    for (const studentId of [cyd.userId, otto.userId, director.userId, crypto.randomUUID()]) {
      await expect(give(iris, studentId)).rejects.toMatchObject({ code: "not-found" });
    }
    expect((await listHolders(iris)).map(({ name }) => name)).toEqual(["Ada Student", "Ben Student"]);
    expect((await listHolders(director)).map(({ name }) => name)).toContain("Cyd Student");
    await getDatabase().user.update({ where: { id: ben.userId }, data: { active: false } });
    await expect(give(iris, ben.userId)).rejects.toMatchObject({ code: "not-found" });
    expect(await listOut(iris)).toEqual([]);
  });
});

describe("a label", () => {
  it("is found by its address and by its code, and nothing else is", async () => {
    const { iris, stoneIds } = school;
    const code = toStoneCode(stoneIds[1]);
    for (const text of [code, code.toLowerCase(), toScanAddress("http://a.test", code)]) {
      expect(await getScannedStone(iris, text)).toMatchObject({ stoneId: stoneIds[1], label: "T-2", code });
    }
    for (const text of ["", "T-2", "0000-0000", "http://a.test/scan/"]) {
      await expect(getScannedStone(iris, text)).rejects.toMatchObject({ code: "not-found" });
    }
  });
});
