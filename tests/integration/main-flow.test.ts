/** From setting an exercise to reading its debrief, through the workflows and reads, on a real SQLite file. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { exportExerciseSet } from "@/lib/data/export-exercise-set";
import { exportPlots } from "@/lib/data/export-plots";
import { getBench } from "@/lib/data/get-bench";
import { getDebrief } from "@/lib/data/get-debrief";
import { getReviewGrid } from "@/lib/data/get-review-grid";
import { getStone } from "@/lib/data/get-stone";
import { getTray } from "@/lib/data/get-tray";
import { listMyExercises } from "@/lib/data/list-my-exercises";
import { listTrail } from "@/lib/data/list-trail";
import { readExerciseSet } from "@/lib/exchange/read-exercise-set";
import { readPlots } from "@/lib/exchange/read-plots";
import { writeExerciseSet } from "@/lib/exchange/write-exercise-set";
import { writePlots } from "@/lib/exchange/write-plots";
import { scorePlots } from "@/lib/scoring/score-plot";
import { createTestDatabase, type TestDatabase } from "@/tests/support/database";
import { buildSchool, type School } from "@/tests/support/school";
import { REFERENCE } from "@/tests/support/school-marks";

let database: TestDatabase;
let school: School;
beforeAll(async () => {
  database = await createTestDatabase();
  school = await buildSchool();
});
afterAll(() => database.remove());

describe("a student", () => {
  it("sees where each stone stands, and points only where the debrief is released", async () => {
    const [ada] = await listMyExercises(school.ada);
    expect(ada?.stones.map(({ label, state, total }) => [label, state, total])).toEqual([
      ["T-1", "handed-in", null],
      ["T-2", "on-the-bench", null],
    ]);
    const [ben] = await listMyExercises(school.ben);
    expect(ben?.stones.map(({ state }) => state)).toEqual(["debrief-ready", "not-begun"]);
    expect(ben?.stones[0]?.total).toBeGreaterThan(0);
  });

  it("finds the bench as it was left", async () => {
    const bench = await getBench(school.ada, school.adaOnBench);
    expect(bench.plot.grades).toEqual({ clarity: "VS1" });
    expect(bench.plot.marks.map(({ id }) => id)).toEqual(["m1"]);
    expect(bench.lastSeq).toBe(2);
    expect(bench.handedInAt).toBeNull();
    expect(bench.stone.label).toBe("T-2");
  });

  it("reads the debrief once it is released", async () => {
    const debrief = await getDebrief(school.ben, school.benReleased);
    expect(debrief.reference).toEqual(REFERENCE);
    expect(debrief.referenceVersion).toBe(1);
    expect(debrief.events).toHaveLength(2);
    const sum = debrief.result.lines.reduce((total, { points }) => total + points, 0);
    expect(sum).toBeCloseTo(debrief.result.total, 9);
  });
});

describe("staff", () => {
  it("see every student and stone in the grid", async () => {
    const grid = await getReviewGrid(school.iris, school.exerciseId);
    expect(grid.students.map(({ name }) => name)).toEqual(["Ada Student", "Ben Student"]);
    expect(grid.cells.map(({ state }) => state)).toEqual(["scored", "on-the-bench", "released", "not-begun"]);
    // VS1 stands three steps above SI2 on the scale VS1, VS2, SI1, SI2: the plot is kinder.
    expect(grid.cells[0]?.clarityBias).toBe(-3);
    expect(grid.exercise).toMatchObject({ stones: 2, students: 2, handedIn: 2, released: 1 });
  });

  it("see stones with their reference's state and how they have been doing", async () => {
    const tray = await getTray(school.iris, school.trayId);
    expect(
      tray.stones.map(({ label, referenceVersion, handIns }) => [label, referenceVersion, handIns]),
    ).toEqual([
      ["T-1", 1, 2],
      ["T-2", 1, 0],
    ]);
    const stone = await getStone(school.otto, school.stoneIds[0]);
    expect(stone.reference).toEqual(REFERENCE);
    expect(stone.mayEdit).toBe(false);
  });

  it("export files that the engine scores as the screen does", async () => {
    const set = readExerciseSet(writeExerciseSet(await exportExerciseSet(school.iris, school.exerciseId)));
    const plots = readPlots(writePlots(await exportPlots(school.iris, school.exerciseId)), set);
    const scored = scorePlots(set, plots);
    const ada = await getDebrief(school.iris, school.adaScored);
    const ben = await getDebrief(school.iris, school.benReleased);
    expect(scored.map(({ result }) => result)).toEqual([ada.result, ben.result]);
  });

  it("can follow who did what", async () => {
    const { rows, total } = await listTrail(school.director, { page: 1 });
    expect(total).toBe(rows.length);
    expect(rows.find(({ action }) => action === "release-debrief")).toMatchObject({
      actorName: "Iris Instructor",
      action: "release-debrief",
      subjectKind: "sitting",
      subjectId: school.benReleased,
    });
  });
});
