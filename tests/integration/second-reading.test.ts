import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { getReferenceVersion } from "@/lib/data/get-reference-version";
import { getStone } from "@/lib/data/get-stone";
import { getTray } from "@/lib/data/get-tray";
import { getDatabase } from "@/lib/data/store/database";
import { getSecondReading } from "@/lib/workflows/get-second-reading";
import { getStoneEvidence } from "@/lib/workflows/get-stone-evidence";
import { handInSecondReading } from "@/lib/workflows/hand-in-second-reading";
import { saveReference } from "@/lib/workflows/save-reference";
import { settleSecondReading } from "@/lib/workflows/settle-second-reading";
import { createTestDatabase, type TestDatabase } from "@/tests/support/database";
import { buildSchool, type School } from "@/tests/support/school";
import { READING, REFERENCE, SECRETS } from "@/tests/support/school-marks";

let database: TestDatabase;
let school: School;
beforeEach(async () => {
  database = await createTestDatabase();
  school = await buildSchool();
});
afterEach(() => database.remove());

describe("a second reading", () => {
  it("keeps the reference from its reader until it is handed in", async () => {
    const { otto, stoneIds, trayId, openReadingId } = school;
    const texts = [
      JSON.stringify(await getStone(otto, stoneIds[1])),
      JSON.stringify(await getSecondReading(otto, openReadingId)),
    ];
    for (const secret of [
      ...SECRETS.reference.filter((one) => one !== "0.1357911"),
      ...SECRETS.decoy,
      "SI2",
    ]) {
      for (const text of texts) expect(text.replaceAll(/"scales":\{.*?\}/g, "")).not.toContain(secret);
    }
    expect((await getTray(otto, trayId)).stones[1]?.clarity).toBeNull();
    for (const refused of [getReferenceVersion(otto, stoneIds[1], 1), getStoneEvidence(otto, stoneIds[1])]) {
      await expect(refused).rejects.toMatchObject({ code: "reading-blind" });
    }
    await handInSecondReading(otto, { readingId: openReadingId, revision: 2, plot: READING });
    expect(JSON.stringify(await getStone(otto, stoneIds[1]))).toContain("reference-secret");
    expect((await getReferenceVersion(otto, stoneIds[1], 1)).marks).toHaveLength(2);
  });

  it("is settled once, into a version that says who settled it, and only on the newest version", async () => {
    const { iris, readingId, stoneIds } = school;
    const before = await getSecondReading(iris, readingId);
    if (before.state === "drawing") throw new Error("it was handed in");
    const key = before.comparison.differences.find(({ kind }) => kind === "only-second")?.key ?? "";
    const choices = { [key]: "second" as const, "grade:clarity": "second" as const };
    await settleSecondReading(iris, { readingId, baseVersion: 1, choices });
    const settled = await getReferenceVersion(iris, stoneIds[0], 2);
    expect(settled.marks).toHaveLength(REFERENCE.marks.length + 1);
    expect(settled.grades.clarity).toBe("SI1");
    const [newest] = (await getStone(iris, stoneIds[0])).versions;
    expect(newest?.note).toContain("second reading by Otto Instructor");
    expect(newest?.note).toContain("2 taken, 0 merged, the rest kept");
    await expect(settleSecondReading(iris, { readingId, baseVersion: 2, choices: {} })).rejects.toMatchObject(
      {
        code: "conflict",
      },
    );
    const trail = JSON.stringify(await getDatabase().trailEntry.findMany());
    for (const secret of Object.values(SECRETS).flat()) expect(trail).not.toContain(secret);
  });

  it("is not settled over a version that was saved meanwhile, and is frozen once handed in", async () => {
    const { iris, readingId, stoneIds } = school;
    await saveReference(iris, { stoneId: stoneIds[0], baseVersion: 1, reference: REFERENCE });
    await expect(settleSecondReading(iris, { readingId, baseVersion: 1, choices: {} })).rejects.toMatchObject(
      {
        code: "conflict",
      },
    );
    expect(await getDatabase().reference.count({ where: { stoneId: stoneIds[0] } })).toBe(2);
    await expect(
      getDatabase().$executeRawUnsafe(`UPDATE "SecondReading" SET "plot" = '{}' WHERE "id" = '${readingId}'`),
    ).rejects.toThrow(/frozen/);
  });
});
