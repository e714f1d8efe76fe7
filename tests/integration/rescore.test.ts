/** A rescore: what it lists is what is applied, nothing changes before that, and all of it changes at once. */
import { describe, expect, it } from "vitest";
import { getDebrief } from "@/lib/data/get-debrief";
import { getRescore } from "@/lib/data/get-rescore";
import { getReviewGrid } from "@/lib/data/get-review-grid";
import { getRubricBench } from "@/lib/data/get-rubric-bench";
import { listTouchedExercises } from "@/lib/data/list-touched-exercises";
import { getDatabase } from "@/lib/data/store/database";
import { DEFAULT_RUBRIC } from "@/lib/plot/rubric";
import { applyRescore } from "@/lib/workflows/apply-rescore";
import { discardRescore } from "@/lib/workflows/discard-rescore";
import { runRescore } from "@/lib/workflows/run-rescore";
import { saveReference } from "@/lib/workflows/save-reference";
import { saveRubric } from "@/lib/workflows/save-rubric";
import { startRescore } from "@/lib/workflows/start-rescore";
import { buildSchool, type School } from "@/tests/support/school";
import { LENIENT_RUBRIC, makeMark, REFERENCE } from "@/tests/support/school-marks";
import { standUpSchool } from "@/tests/support/stand-up-school";

let school: School;
standUpSchool(async () => {
  school = await buildSchool();
});

const getView = () => getRescore(school.iris, school.exerciseId);
const saveLenient = (baseVersion = 1) =>
  saveRubric(school.iris, { exerciseId: school.exerciseId, baseVersion, rubric: LENIENT_RUBRIC });
const start = () => startRescore(school.iris, { exerciseId: school.exerciseId });
async function workOut(): Promise<string> {
  const { rescoreId } = await start();
  await runRescore(rescoreId);
  return rescoreId;
}
/** What each of the class's results stands at, by sitting. */
async function readTotals(): Promise<Map<string, number>> {
  const { cells } = await getReviewGrid(school.iris, school.exerciseId);
  return new Map(
    cells.flatMap(({ sittingId, total }) =>
      sittingId === null || total === null ? [] : [[sittingId, total]],
    ),
  );
}

describe("a saved rubric", () => {
  it("is a new version that scores nothing anew, and is counted against the results", async () => {
    const before = await readTotals();
    expect(await saveLenient()).toEqual({ version: 2 });
    expect(await readTotals()).toEqual(before);
    const { older, rubricVersion, job } = await getView();
    expect(older).toEqual({ results: 2, byReference: 0, byBody: 0, byRubric: 2, released: 1 });
    expect([rubricVersion, job]).toEqual([2, null]);
  });

  it("that says the same is no new version; with faults, or after somebody else's, it is refused", async () => {
    const { exerciseId, iris } = school;
    const save = (rubric: typeof DEFAULT_RUBRIC, baseVersion = 1) =>
      saveRubric(iris, { exerciseId, baseVersion, rubric });
    expect(await save(DEFAULT_RUBRIC)).toEqual({ version: 1 });
    await expect(save({ ...DEFAULT_RUBRIC, far: 0.01 })).rejects.toMatchObject({
      faults: [{ path: "rubric.far" }],
    });
    await expect(save({ ...DEFAULT_RUBRIC, near: 2 })).rejects.toMatchObject({
      faults: [{ path: "rubric.near" }],
    });
    await saveLenient();
    await expect(saveLenient()).rejects.toMatchObject({ code: "conflict" });
  });
});

describe("the rubric's editor", () => {
  it("gets a real plot with its newest reference, the one asked for or else the fullest", async () => {
    const { iris, exerciseId, benReleased, cydScored, adaOnBench } = school;
    const { example, plots } = await getRubricBench(iris, exerciseId, benReleased);
    expect(plots.map(({ studentName, stoneLabel }) => [studentName, stoneLabel])).toEqual([
      ["Ada Student", "T-1"],
      ["Ben Student", "T-1"],
    ]);
    expect(example?.studentName).toBe("Ben Student");
    expect(example?.plot.marks[0]?.shape).toEqual(makeMark("m1", 0.1271828).shape);
    expect(example?.reference).toEqual(REFERENCE);
    // Of another section, and not handed in: neither is an example.
    for (const sittingId of [cydScored, adaOnBench]) {
      const other = await getRubricBench(iris, exerciseId, sittingId);
      expect(other.example?.studentName).toBe("Ada Student");
    }
  });
});

describe("what a rescore would change", () => {
  it("is listed before anything changes, and is then what is applied", async () => {
    const before = await readTotals();
    await saveLenient();
    const rescoreId = await workOut();
    expect(await readTotals(), "nothing is changed yet").toEqual(before);
    const { job } = await getView();
    expect(job).toMatchObject({ rescoreId, state: "ready", total: 2, done: 2, failed: 0, overtaken: false });
    expect(
      job?.rows.map(({ studentName }) => studentName),
      "the biggest change first",
    ).toEqual(["Ben Student", "Ada Student"]);
    const listed = new Map(before);
    for (const { sittingId, before: old, after } of job?.rows ?? []) {
      expect(old).toBe(before.get(sittingId));
      expect(after).toBeGreaterThan(old);
      listed.set(sittingId, after);
    }
    const summary = await applyRescore(school.iris, { rescoreId });
    expect(summary).toEqual(job?.summary);
    expect(summary.changed + summary.unchanged).toBe(2);
    expect(await readTotals()).toEqual(listed);
    expect((await getView()).older.results).toBe(0);
  });

  it("changes a released debrief only once it is applied, and keeps the earlier result", async () => {
    const before = await getDebrief(school.ben, school.benReleased);
    await saveLenient();
    const rescoreId = await workOut();
    expect(await getDebrief(school.ben, school.benReleased)).toEqual(before);
    await applyRescore(school.iris, { rescoreId });
    const after = await getDebrief(school.ben, school.benReleased);
    expect([before.rubricVersion, after.rubricVersion]).toEqual([1, 2]);
    expect(after.result.total).toBeGreaterThan(before.result.total);
    const kept = await getDatabase().result.findMany({
      where: { handIn: { sittingId: school.benReleased } },
      orderBy: { createdAt: "asc" },
      select: { isCurrent: true, totalHundredths: true },
    });
    expect(kept).toEqual([
      { isCurrent: false, totalHundredths: Math.round(before.result.total * 100) },
      { isCurrent: true, totalHundredths: Math.round(after.result.total * 100) },
    ]);
  });

  it("is told to the trail: who, by what, how many and by how much", async () => {
    await saveLenient();
    const { summary } = await applyRescore(school.iris, { rescoreId: await workOut() }).then(async () => ({
      summary: (await getView()).job?.summary,
    }));
    const [entry] = await getDatabase().trailEntry.findMany({ where: { action: "rescore-exercise" } });
    expect(entry).toMatchObject({ actorName: "Iris Instructor", subjectId: school.exerciseId });
    expect(entry?.detail).toMatch(
      /^rubric version 2; references T-1 1, T-2 1; 2 of 2 results changed \(2 up, 0 down\); mean \+\d+\.\d\d, largest \+\d+\.\d\d points$/,
    );
    expect(summary).toMatchObject({ changed: 2, down: 0, up: 2 });
  });

  it("takes a new reference in, and the stone says which exercises it touches", async () => {
    const { iris, stoneIds } = school;
    await saveReference(iris, {
      stoneId: stoneIds[0],
      baseVersion: 1,
      reference: { ...REFERENCE, decoys: [] },
      note: "",
    });
    const touched = await listTouchedExercises(school.director, stoneIds[0]);
    expect(touched.map(({ exerciseId, results, older }) => [exerciseId, results, older]).sort()).toEqual(
      [
        [school.exerciseId, 2, 2],
        [school.otherExerciseId, 1, 1],
      ].sort(),
    );
    // Iris teaches only the first section.
    expect((await listTouchedExercises(iris, stoneIds[0])).map(({ older }) => older)).toEqual([2]);
    expect((await getView()).older).toMatchObject({ results: 2, byReference: 2, byRubric: 0 });
    await applyRescore(iris, { rescoreId: await workOut() });
    expect((await getDebrief(school.ben, school.benReleased)).referenceVersion).toBe(2);
    expect((await listTouchedExercises(iris, stoneIds[0])).map(({ older }) => older)).toEqual([0]);
  });
});

describe("a rescore that does not come to be applied", () => {
  it("is refused where everything is up to date", async () => {
    await expect(start()).rejects.toMatchObject({ code: "conflict" });
  });

  it("is one at a time: asked for again, the same is given; and it is applied once", async () => {
    await saveLenient();
    const [one, two] = await Promise.all([start(), start()]);
    expect(one).toEqual(two);
    await Promise.all([runRescore(one.rescoreId), runRescore(one.rescoreId)]);
    expect((await getView()).job).toMatchObject({ state: "ready", done: 2 });
    await applyRescore(school.iris, one);
    await expect(applyRescore(school.iris, one)).rejects.toMatchObject({ code: "conflict" });
    await expect(discardRescore(school.iris, one)).rejects.toMatchObject({ code: "conflict" });
  });

  it("leaves nothing behind when it is discarded", async () => {
    const before = await readTotals();
    await saveLenient();
    const rescoreId = await workOut();
    await discardRescore(school.iris, { rescoreId });
    expect(await getDatabase().result.count({ where: { rescoreId } })).toBe(0);
    expect(await readTotals()).toEqual(before);
    await expect(applyRescore(school.iris, { rescoreId })).rejects.toMatchObject({ code: "conflict" });
  });

  it("cannot be applied once a newer version overtook it, and the next one discards it", async () => {
    const before = await readTotals();
    await saveLenient();
    const rescoreId = await workOut();
    await saveRubric(school.iris, {
      exerciseId: school.exerciseId,
      baseVersion: 2,
      rubric: { ...DEFAULT_RUBRIC, shares: { plot: 50, clarity: 40, otherGrades: 10 } },
    });
    expect((await getView()).job?.overtaken).toBe(true);
    await expect(applyRescore(school.iris, { rescoreId })).rejects.toMatchObject({ code: "conflict" });
    expect(await readTotals()).toEqual(before);
    const next = await workOut();
    expect(next).not.toBe(rescoreId);
    expect(await getDatabase().rescore.findUnique({ where: { id: rescoreId } })).toMatchObject({
      state: "discarded",
      endedById: null,
    });
    await applyRescore(school.iris, { rescoreId: next });
    expect((await getDebrief(school.iris, school.adaScored)).rubricVersion).toBe(3);
  });

  it("overtaken while it is worked out, is discarded by itself", async () => {
    await saveLenient();
    const { rescoreId } = await start();
    await saveRubric(school.iris, {
      exerciseId: school.exerciseId,
      baseVersion: 2,
      rubric: DEFAULT_RUBRIC,
    });
    await runRescore(rescoreId);
    expect((await getView()).job).toMatchObject({ state: "discarded", endedByName: null, done: 0 });
  });
});
