/** A process that is killed in the middle of a rescore: the old results stay in sight, and the next start goes on with it. */
import { spawn } from "node:child_process";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { describe, expect, it } from "vitest";
import { getRescore } from "@/lib/data/get-rescore";
import { getReviewGrid } from "@/lib/data/get-review-grid";
import { listMyExercises } from "@/lib/data/list-my-exercises";
import { closeDatabase, getDatabase } from "@/lib/data/store/database";
import { applyRescore } from "@/lib/workflows/apply-rescore";
import { resumeRescores } from "@/lib/workflows/resume-rescores";
import { saveRubric } from "@/lib/workflows/save-rubric";
import { startRescore } from "@/lib/workflows/start-rescore";
import { buildSchool, type School } from "@/tests/support/school";
import { LENIENT_RUBRIC } from "@/tests/support/school-marks";
import { standUpSchool } from "@/tests/support/stand-up-school";

const ROOT = join(import.meta.dirname, "../..");

let school: School;
standUpSchool(async () => {
  school = await buildSchool();
});

const getView = () => getRescore(school.iris, school.exerciseId);
const saveLenient = (baseVersion = 1) =>
  saveRubric(school.iris, { exerciseId: school.exerciseId, baseVersion, rubric: LENIENT_RUBRIC });
const start = () => startRescore(school.iris, { exerciseId: school.exerciseId });
/** What each of the class's results stands at, by sitting. */
async function readTotals(): Promise<Map<string, number>> {
  const { cells } = await getReviewGrid(school.iris, school.exerciseId);
  return new Map(
    cells.flatMap(({ sittingId, total }) =>
      sittingId === null || total === null ? [] : [[sittingId, total]],
    ),
  );
}

const CLASS = 400;

/** More students with Ada's plot and result, so that a rescore takes its time. */
async function enlargeClass(): Promise<void> {
  const client = getDatabase();
  const [exerciseStoneId] = school.exerciseStoneIds;
  const handIn = await client.handIn.findUniqueOrThrow({
    where: { sittingId: school.adaScored },
    include: { results: true, sitting: true },
  });
  const [result] = handIn.results;
  if (result === undefined) throw new Error("Ada has no result");
  const ids = Array.from({ length: CLASS }, (_, i) => `many-${i}`);
  await client.user.createMany({
    data: ids.map((id) => ({ id, login: id, name: id, role: "student" as const, passwordHash: "-" })),
  });
  await client.sitting.createMany({
    data: ids.map((id) => ({ id, exerciseStoneId, studentId: id, state: handIn.sitting.state ?? {} })),
  });
  await client.handIn.createMany({
    data: ids.map((id) => ({
      id,
      sittingId: id,
      plot: handIn.plot ?? {},
      prepared: handIn.prepared ?? {},
      lastSeq: 2,
    })),
  });
  const { id: _id, result: body, detail, ...rest } = result;
  await client.result.createMany({
    data: ids.map((handInId) => ({ ...rest, handInId, result: body ?? {}, detail: detail ?? {} })),
  });
}

/** Works the rescore out in a process of its own and kills that once some results are kept. */
async function workOutUntilKilled(rescoreId: string): Promise<void> {
  const child = spawn(
    process.execPath,
    ["--conditions=react-server", "--import", "tsx", join(ROOT, "tests/support/run-rescore.ts"), rescoreId],
    { cwd: ROOT, stdio: ["ignore", "pipe", "inherit"] },
  );
  const ended = new Promise<NodeJS.Signals | null>((resolve) =>
    child.on("close", (_code, signal) => resolve(signal)),
  );
  let kept = 0;
  while (kept === 0 && child.exitCode === null) {
    await wait(2);
    kept = await getDatabase().result.count({ where: { rescoreId } });
  }
  child.kill("SIGKILL");
  expect(await ended).toBe("SIGKILL");
}

describe("a process that is killed while it rescores", () => {
  it("leaves every old result in sight, and a start goes on and brings it to its end", async () => {
    await enlargeClass();
    await saveLenient();
    const before = await readTotals();
    const mine = await listMyExercises(school.ben);
    const { rescoreId } = await start();
    await workOutUntilKilled(rescoreId);
    await closeDatabase();
    const kept = await getDatabase().result.count({ where: { rescoreId } });
    expect(kept).toBeGreaterThan(0);
    expect(kept, "it was killed in the middle").toBeLessThan(CLASS + 2);
    expect(await readTotals()).toEqual(before);
    expect(await listMyExercises(school.ben)).toEqual(mine);
    expect((await getView()).job).toMatchObject({ state: "working", total: CLASS + 2, done: kept });
    await expect(applyRescore(school.iris, { rescoreId })).rejects.toMatchObject({ code: "conflict" });

    expect(await resumeRescores()).toEqual({ resumed: 1 });
    const { job } = await getView();
    expect(job).toMatchObject({ state: "ready", total: CLASS + 2, done: CLASS + 2, failed: 0 });
    expect(await readTotals()).toEqual(before);
    await applyRescore(school.iris, { rescoreId });
    const after = await readTotals();
    expect(after).toEqual(
      new Map([...before, ...(job?.rows ?? []).map((row) => [row.sittingId, row.after] as const)]),
    );
    expect(await resumeRescores()).toEqual({ resumed: 0 });
  }, 120_000);
});
