/**
 * Nothing acknowledged is lost when the process is killed: a real process saves events for several students and is
 * killed with SIGKILL in the middle, again and again; afterwards every acknowledged step is in the database, none is
 * doubled, none is half there, and each sitting's state is what its log adds up to.
 */
import { spawn } from "node:child_process";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { afterAll, beforeAll, expect, it } from "vitest";
import { closeDatabase, getDatabase } from "@/lib/data/store/database";
import { parseColumn } from "@/lib/data/store/parse-column";
import { rebuildSitting, SittingEventSchema } from "@/lib/plot/sitting-event";
import { SittingStateSchema } from "@/lib/plot/sitting-state";
import { openSitting } from "@/lib/workflows/open-sitting";
import { createTestDatabase, type TestDatabase } from "@/tests/support/database";
import { buildSchool, makePerson, type School } from "@/tests/support/school";

const ROUNDS = 5;
const STUDENTS = 4;
const ROOT = join(import.meta.dirname, "../..");
const SCRIPT = join(ROOT, "tests/support/write-events.ts");

let database: TestDatabase;
let school: School;
beforeAll(async () => {
  database = await createTestDatabase();
  school = await buildSchool();
});
afterAll(() => database.remove());

interface Bench {
  readonly sittingId: string;
  readonly studentId: string;
}

async function seatStudents(): Promise<Bench[]> {
  const benches: Bench[] = [];
  for (let i = 0; i < STUDENTS; i += 1) {
    const student = await makePerson(`plotter-${i}`, "Plotter", "student");
    await getDatabase().enrolment.create({
      data: { sectionId: school.sectionId, studentId: student.userId },
    });
    const [exerciseStoneId] = school.exerciseStoneIds;
    const { sittingId } = await openSitting(student, { exerciseStoneId });
    benches.push({ sittingId, studentId: student.userId });
  }
  return benches;
}

/** Runs the plotting process, kills it some answers after it got going, and gives every line that it printed. */
async function plotUntilKilled(tasks: object[], answers: number, delayMs: number): Promise<string[]> {
  const child = spawn(
    process.execPath,
    ["--conditions=react-server", "--import", "tsx", SCRIPT, JSON.stringify(tasks)],
    {
      cwd: ROOT,
      stdio: ["ignore", "pipe", "inherit"],
    },
  );
  let printed = "";
  const ended = new Promise<NodeJS.Signals | null>((resolve) =>
    child.on("close", (_code, signal) => resolve(signal)),
  );
  await new Promise<void>((resolve) => {
    child.stdout.on("data", (chunk: Buffer) => {
      printed += chunk.toString();
      if (printed.split("\n").length > answers) resolve();
    });
    child.on("close", () => resolve());
  });
  await wait(delayMs);
  child.kill("SIGKILL");
  expect(await ended).toBe("SIGKILL");
  // A last line that was cut off in the middle was not read whole, and is not counted.
  return printed.split("\n").slice(0, -1);
}

async function readLog(sittingId: string) {
  const rows = await getDatabase().sittingEvent.findMany({ where: { sittingId }, orderBy: { seq: "asc" } });
  return rows.map(({ body }) => parseColumn(SittingEventSchema, body, "SittingEvent.body"));
}

it(`loses no acknowledged step when the process is killed ${ROUNDS} times over`, async () => {
  const benches = await seatStudents();
  const acknowledged = new Map(benches.map(({ sittingId }) => [sittingId, 0]));
  let lines = 0;
  for (let round = 0; round < ROUNDS; round += 1) {
    const tasks = [];
    for (const bench of benches) tasks.push({ ...bench, from: (await readLog(bench.sittingId)).length + 1 });
    await closeDatabase();
    for (const line of await plotUntilKilled(tasks, 8 + 3 * round, 7 * round)) {
      const [sittingId = "", lastSeq] = line.split(" ");
      acknowledged.set(sittingId, Math.max(acknowledged.get(sittingId) ?? 0, Number(lastSeq)));
      lines += 1;
    }
    for (const { sittingId } of benches) {
      const log = await readLog(sittingId);
      expect(log.length).toBeGreaterThanOrEqual(acknowledged.get(sittingId) ?? 0);
      expect(log.map(({ seq }) => seq)).toEqual(log.map((_, index) => index + 1));
      expect(log.length % 3, "a batch is there whole or not at all").toBe(0);
      const sitting = await getDatabase().sitting.findUniqueOrThrow({ where: { id: sittingId } });
      expect(parseColumn(SittingStateSchema, sitting.state, "Sitting.state")).toEqual(rebuildSitting(log));
    }
  }
  expect(lines).toBeGreaterThan(ROUNDS * 8);
  const check = await getDatabase().$queryRawUnsafe<{ integrity_check: string }[]>("PRAGMA integrity_check");
  expect(check).toEqual([{ integrity_check: "ok" }]);
}, 180_000);
