/** Results: written once for a hand-in, and not changed behind anybody's back by a new reference or rubric. */
import { describe, expect, it } from "vitest";
import { getDebrief } from "@/lib/data/get-debrief";
import { getReviewGrid } from "@/lib/data/get-review-grid";
import { getDatabase } from "@/lib/data/store/database";
import { createStone } from "@/lib/workflows/create-stone";
import { enrolStudents } from "@/lib/workflows/enrol-students";
import { handIn } from "@/lib/workflows/hand-in";
import { releaseDebriefs } from "@/lib/workflows/release-debriefs";
import { saveReference } from "@/lib/workflows/save-reference";
import { scoreHandIn } from "@/lib/workflows/score-hand-in";
import { scorePending } from "@/lib/workflows/score-pending";
import { updateExercise } from "@/lib/workflows/update-exercise";
import { updateStone } from "@/lib/workflows/update-stone";
import { withdrawRelease } from "@/lib/workflows/withdraw-release";
import { buildSchool, makeOpenDates, plotAndHandIn, type School, WRITER } from "@/tests/support/school";
import { REFERENCE } from "@/tests/support/school-marks";
import { standUpSchool } from "@/tests/support/stand-up-school";

let school: School;
standUpSchool(async () => {
  school = await buildSchool();
});

const results = (sittingId: string) =>
  getDatabase().result.findMany({
    where: { handIn: { sittingId } },
    orderBy: { createdAt: "asc" },
    include: { reference: true, rubricVersion: true },
  });
const body = { cut: "round-brilliant" as const, proportions: { tablePct: 57 } };
const saveNewReference = () =>
  saveReference(school.iris, {
    stoneId: school.stoneIds[0],
    baseVersion: 1,
    reference: { ...REFERENCE, decoys: [] },
    note: "",
  });

describe("scoring", () => {
  it("is done once for a hand-in, however often it is asked for", async () => {
    const { handInId } = await handIn(school.ada, {
      sittingId: school.adaOnBench,
      writerId: WRITER,
      lastSeq: 2,
    });
    const answers = await Promise.all(Array.from({ length: 4 }, () => scoreHandIn(handInId)));
    expect(answers.filter(Boolean)).toHaveLength(1);
    expect(await scoreHandIn(handInId)).toBe(false);
    expect(await results(school.adaOnBench)).toHaveLength(1);
  });

  it("that was cut off is made up for by the sweep", async () => {
    await handIn(school.ada, { sittingId: school.adaOnBench, writerId: WRITER, lastSeq: 2 });
    const grid = await getReviewGrid(school.iris, school.exerciseId);
    expect(grid.cells.map(({ state }) => state)).toContain("scoring");
    expect(await scorePending()).toEqual({ scored: 1, failed: 0 });
    expect(await scorePending()).toEqual({ scored: 0, failed: 0 });
    const again = await getReviewGrid(school.iris, school.exerciseId);
    expect(again.cells.map(({ state }) => state)).not.toContain("scoring");
  });

  it("waits for a stone that has no reference yet", async () => {
    const { stoneId } = await createStone(school.iris, { trayId: school.trayId, label: "T-3", body });
    await getDatabase().exerciseStone.updateMany({
      where: { id: school.exerciseStoneIds[1] },
      data: { stoneId },
    });
    await handIn(school.ada, { sittingId: school.adaOnBench, writerId: WRITER, lastSeq: 2 });
    expect(await scorePending()).toEqual({ scored: 0, failed: 0 });
    await saveReference(school.iris, { stoneId, baseVersion: 0, reference: REFERENCE, note: "" });
    expect(await scorePending()).toEqual({ scored: 1, failed: 0 });
  });

  it("keeps reference, rubric, engine and the stone's revision with the result", async () => {
    const [result] = await results(school.adaScored);
    expect(result).toMatchObject({ stoneRevision: 1, isCurrent: true });
    expect(result?.reference.version).toBe(1);
    expect(result?.rubricVersion.version).toBe(1);
    expect(result?.engineVersion).toMatch(/^\d+\.\d+\.\d+$/);
  });
});

describe("a new version of the reference", () => {
  it("scores what has no result yet, and leaves every result as it is", async () => {
    const before = await Promise.all(
      [school.adaScored, school.benReleased].map((sittingId) => getDebrief(school.iris, sittingId)),
    );
    await saveNewReference();
    expect(await scorePending()).toEqual({ scored: 0, failed: 0 });
    const after = await Promise.all(
      [school.adaScored, school.benReleased].map((sittingId) => getDebrief(school.iris, sittingId)),
    );
    expect(after).toEqual(before);
    await enrolStudents(school.iris, { sectionId: school.sectionId, studentIds: [school.cyd.userId] });
    const cyd = await plotAndHandIn(school.cyd, school.exerciseStoneIds[0], 0.0161803);
    expect((await getDebrief(school.iris, cyd)).referenceVersion).toBe(2);
  });

  it("changes nothing that a student may read, also once the release was taken back", async () => {
    await saveNewReference();
    await withdrawRelease(school.iris, { sittingIds: [school.benReleased] });
    expect(await scorePending()).toEqual({ scored: 0, failed: 0 });
    await expect(getDebrief(school.ben, school.benReleased)).rejects.toMatchObject({ code: "not-found" });
    await releaseDebriefs(school.iris, { sittingIds: [school.benReleased] });
    expect((await getDebrief(school.ben, school.benReleased)).referenceVersion).toBe(1);
  });

  it("is refused when somebody saved one first", async () => {
    await saveNewReference();
    await expect(saveNewReference()).rejects.toMatchObject({ code: "conflict" });
  });

  it("is refused with the place of each fault", async () => {
    const [first] = REFERENCE.marks;
    const marks = [{ ...first, id: "x", shape: { kind: "dot", at: [0.5, 0.5] } }] as typeof REFERENCE.marks;
    const save = saveReference(school.iris, {
      stoneId: school.stoneIds[0],
      baseVersion: 1,
      reference: { ...REFERENCE, marks, grades: { clarity: "Clean" } },
      note: "",
    });
    await expect(save).rejects.toMatchObject({
      code: "bad-input",
      faults: [{ path: "reference.grades.clarity" }, { path: "reference.marks[0].shape.at" }],
    });
  });
});

describe("a change of the exercise or the stone", () => {
  const change = (revision: number, more: object) =>
    updateExercise(school.iris, {
      exerciseId: school.exerciseId,
      revision,
      title: "Changed",
      notes: "",
      ...makeOpenDates(),
      rules: { preparation: "off", schoolRules: "" },
      stoneIds: [...school.stoneIds],
      ...more,
    });

  it("makes a new version of the rubric only where it changes, and scores nothing anew by it", async () => {
    await change(1, {});
    expect(await getDatabase().rubricVersion.count({ where: { exerciseId: school.exerciseId } })).toBe(1);
    await change(2, { rubric: { near: 0.05 } });
    expect(await scorePending()).toEqual({ scored: 0, failed: 0 });
    const grid = await getReviewGrid(school.iris, school.exerciseId);
    expect(grid.older).toEqual({ results: 2, byReference: 0, byBody: 0, byRubric: 2, released: 1 });
    expect([grid.rubricVersion, grid.rubric.near, grid.revision]).toEqual([2, 0.05, 3]);
  });

  it("is refused when somebody else was first, and when a stone that was begun would go", async () => {
    await change(1, {});
    await expect(change(1, {})).rejects.toMatchObject({ code: "conflict" });
    await expect(change(2, { stoneIds: [school.stoneIds[1]] })).rejects.toMatchObject({ code: "conflict" });
  });

  it("is refused with dates out of order and a rubric that cannot be scored by", async () => {
    const opensAt = new Date(Date.now() + 1e9).toISOString();
    await expect(change(1, { opensAt })).rejects.toMatchObject({ faults: [{ path: "dueAt" }] });
    await expect(change(1, { rubric: { near: 0.2 } })).rejects.toMatchObject({
      faults: [{ path: "rubric.far" }],
    });
  });

  it("of a stone's proportions leaves results to a rescore, and is refused where the reference would not fit", async () => {
    const update = (revision: number, more: object) =>
      updateStone(school.iris, { stoneId: school.stoneIds[0], revision, label: "T-1", body, ...more });
    expect(await update(1, { body: { ...body, proportions: { tablePct: 60 } } })).toEqual({ revision: 2 });
    expect(await scorePending()).toEqual({ scored: 0, failed: 0 });
    expect((await getReviewGrid(school.iris, school.exerciseId)).older).toMatchObject({
      results: 2,
      byBody: 2,
    });
    await expect(update(1, {})).rejects.toMatchObject({ code: "conflict" });
    await expect(update(2, { label: "T-2" })).rejects.toMatchObject({ code: "conflict" });
    await expect(update(2, { body: { ...body, proportions: { tablePct: 150 } } })).rejects.toMatchObject({
      code: "bad-input",
    });
  });
});

describe("releasing", () => {
  it("is all or none: a stone that is not scored stops it", async () => {
    const release = releaseDebriefs(school.iris, { sittingIds: [school.adaScored, school.adaOnBench] });
    await expect(release).rejects.toMatchObject({ code: "conflict" });
    await expect(getDebrief(school.ada, school.adaScored)).rejects.toMatchObject({ code: "not-found" });
  });

  it("is written once however often it is asked for, and another section's sittings stop it", async () => {
    const both = { sittingIds: [school.adaScored, school.benReleased, school.adaScored] };
    expect(await releaseDebriefs(school.iris, both)).toEqual({ released: 1 });
    expect(await releaseDebriefs(school.iris, both)).toEqual({ released: 0 });
    const mixed = releaseDebriefs(school.iris, { sittingIds: [school.adaScored, school.cydScored] });
    await expect(mixed).rejects.toMatchObject({ code: "not-found" });
  });
});
