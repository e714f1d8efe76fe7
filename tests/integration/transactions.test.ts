/** Writers at once: in one process they take turns, between processes they wait; none is lost and none fails. */
import { spawn } from "node:child_process";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { getDatabase, runInTransaction } from "@/lib/data/store/database";
import { runTogether } from "@/lib/data/store/run-together";
import { createTestDatabase, type TestDatabase } from "@/tests/support/database";
import { makePerson } from "@/tests/support/school";

let database: TestDatabase;
let userId: string;
beforeAll(async () => {
  database = await createTestDatabase();
  ({ userId } = await makePerson("counter", "Counter", "student"));
});
afterAll(() => database.remove());

const count = async () =>
  (await getDatabase().user.findUniqueOrThrow({ where: { id: userId } })).sessionEpoch;

/** Reads, then writes what it read and one more: loses counts wherever two do it at the same time. */
async function countUp(): Promise<void> {
  await runInTransaction(async (transaction) => {
    const user = await transaction.user.findUniqueOrThrow({ where: { id: userId } });
    await transaction.user.update({ where: { id: userId }, data: { sessionEpoch: user.sessionEpoch + 1 } });
  });
}

describe("transactions", () => {
  it("of one process lose no write", async () => {
    const before = await count();
    await Promise.all(Array.from({ length: 60 }, countUp));
    expect(await count()).toBe(before + 60);
  });

  it("of several processes lose no write and are never told that the database is locked", async () => {
    const before = await count();
    const tsx = join(import.meta.dirname, "../../node_modules/tsx/dist/cli.mjs");
    const script = join(import.meta.dirname, "../support/count-up.ts");
    const run = () =>
      new Promise<number | null>((resolve, reject) => {
        const child = spawn(process.execPath, [tsx, "--conditions=react-server", script, userId, "10"], {
          stdio: ["ignore", "ignore", "inherit"],
        });
        child.on("error", reject);
        child.on("exit", resolve);
      });
    const [codes] = await Promise.all([
      Promise.all([run(), run(), run()]),
      Promise.all(Array.from({ length: 10 }, countUp)),
    ]);
    expect(codes).toEqual([0, 0, 0]);
    expect(await count()).toBe(before + 40);
  }, 120_000);

  it("roll back whole on a throw, and leave the way free for the next", async () => {
    const before = await count();
    const failing = runInTransaction(async (transaction) => {
      await transaction.user.update({ where: { id: userId }, data: { sessionEpoch: 9999 } });
      throw new Error("half way");
    });
    await expect(failing).rejects.toThrow("half way");
    expect(await count()).toBe(before);
    await countUp();
    expect(await count()).toBe(before + 1);
  });

  it("are told at once when they ask the database past their transaction", async () => {
    await expect(runInTransaction(async () => getDatabase().user.count())).rejects.toThrow(
      /transaction's own/,
    );
  });

  it("keep the settings of the connection", async () => {
    const rows = await getDatabase().$queryRawUnsafe<{ foreign_keys: bigint }[]>("PRAGMA foreign_keys");
    expect(Number(rows[0]?.foreign_keys)).toBe(1);
    await expect(
      getDatabase().enrolment.create({ data: { sectionId: "none", studentId: "none" } }),
    ).rejects.toMatchObject({ code: "P2003" });
  });
});

describe("work that shares a transaction", () => {
  /** As `countUp`, and then throws where it is told to. */
  const countTogether = (isBad: boolean) =>
    runTogether(async (transaction) => {
      const user = await transaction.user.findUniqueOrThrow({ where: { id: userId } });
      const sessionEpoch = user.sessionEpoch + 1;
      await transaction.user.update({ where: { id: userId }, data: { sessionEpoch } });
      if (isBad) throw new Error("half way");
      return sessionEpoch;
    });

  it("takes back what threw and keeps the rest, each answered for itself and in order", async () => {
    const before = await count();
    const answers = await Promise.allSettled(
      Array.from({ length: 100 }, (_, index) => countTogether(index % 3 === 1)),
    );
    const kept = answers.flatMap((answer) => (answer.status === "fulfilled" ? [answer.value] : []));
    expect(kept).toEqual(Array.from({ length: 67 }, (_, index) => before + 1 + index));
    expect(answers.filter(({ status }) => status === "rejected")).toHaveLength(33);
    expect(await count()).toBe(before + 67);
  });

  it("takes turns with other transactions", async () => {
    const before = await count();
    await Promise.all(
      Array.from({ length: 30 }, (_, index) => (index % 2 ? countUp() : countTogether(false))),
    );
    expect(await count()).toBe(before + 30);
  });

  it("answers nothing before it is on disk", async () => {
    const before = await count();
    const seen = await Promise.all(Array.from({ length: 5 }, () => countTogether(false).then(() => count())));
    for (const one of seen) expect(one).toBeGreaterThan(before);
    expect(Math.max(...seen)).toBe(before + 5);
  });
});
