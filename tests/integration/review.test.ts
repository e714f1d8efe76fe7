/**
 * Review: overrules are in points, tallies and exports at once, are kept through rescoring and undone as easily; two writers
 * are told of one another; nothing of it reaches a student before the release, and it goes with an erased student.
 */
import { describe, expect, it } from "vitest";
import { isAppError } from "@/lib/base/app-error";
import { exportPersonData } from "@/lib/data/export-person-data";
import { getDebrief } from "@/lib/data/get-debrief";
import { getRescore } from "@/lib/data/get-rescore";
import { getReview } from "@/lib/data/get-review";
import { getReviewGrid } from "@/lib/data/get-review-grid";
import { listMyExercises } from "@/lib/data/list-my-exercises";
import { listTouchedExercises } from "@/lib/data/list-touched-exercises";
import { getDatabase } from "@/lib/data/store/database";
import type { Ruling } from "@/lib/plot/overrule";
import { acceptStray } from "@/lib/workflows/accept-stray";
import { applyRescore } from "@/lib/workflows/apply-rescore";
import { deleteComment } from "@/lib/workflows/delete-comment";
import { erasePerson } from "@/lib/workflows/erase-person";
import { overrule } from "@/lib/workflows/overrule";
import { releaseDebriefs } from "@/lib/workflows/release-debriefs";
import { runRescore } from "@/lib/workflows/run-rescore";
import { saveReference } from "@/lib/workflows/save-reference";
import { saveRubric } from "@/lib/workflows/save-rubric";
import { startRescore } from "@/lib/workflows/start-rescore";
import { undoOverrule } from "@/lib/workflows/undo-overrule";
import { updateStone } from "@/lib/workflows/update-stone";
import { writeComment } from "@/lib/workflows/write-comment";
import { buildSchool, type School } from "@/tests/support/school";
import { LENIENT_RUBRIC, REFERENCE } from "@/tests/support/school-marks";
import { standUpSchool } from "@/tests/support/stand-up-school";

let school: School;
standUpSchool(async () => {
  school = await buildSchool();
});

/** Ada's one mark, a stray, laid to the reference's first: in full place, another characteristic. */
const TOGETHER: Ruling = { kind: "together", reference: "reference-secret-1", mark: "m1", place: "full" };
const SPARED: Ruling = { kind: "cause", mark: "m1", cause: null };
const GRADE: Ruling = { kind: "grade", property: "clarity", credit: 0.5 };

const rule = (ruling: Ruling, baseRevision = 0, viewer = school.iris) =>
  overrule(viewer, { sittingId: school.adaScored, baseRevision, ruling, reason: "Seen at the desk." });
const comment = (baseRevision: number, text = "Look at 2 o'clock.", commentId: string | null = null) =>
  writeComment(school.iris, {
    sittingId: school.adaScored,
    baseRevision,
    commentId,
    subject: "mark:m1",
    text,
  });
const review = () => getReview(school.iris, school.adaScored);
const readResult = async () => (await review()).debrief.result;
async function rescoreAll(): Promise<void> {
  const { rescoreId } = await startRescore(school.iris, { exerciseId: school.exerciseId });
  await runRescore(rescoreId);
  await applyRescore(school.iris, { rescoreId });
}
/** What every page of figures would say of Ada's plot. */
async function readEverywhere() {
  const { cells } = await getReviewGrid(school.iris, school.exerciseId);
  const cell = cells.find(({ sittingId }) => sittingId === school.adaScored);
  const tally = await getDatabase().resultTally.findUniqueOrThrow({ where: { sittingId: school.adaScored } });
  const result = await readResult();
  return {
    cell: cell?.total,
    tally: tally.totalHundredths / 100,
    result: result.total,
    outcome: tally.outcome,
  };
}

describe("an overrule", () => {
  it("is at once in the points, the grid and the tally, and undone leaves what was there", async () => {
    const before = await readResult();
    await rule(TOGETHER);
    await rule(GRADE, 1);
    const after = await readEverywhere();
    expect([after.cell, after.tally]).toEqual([after.result, after.result]);
    expect(after.outcome).toEqual({ found: ["reference-secret-1"], overlooked: ["reference-secret-2"] });
    const { result, detail } = (await review()).debrief;
    expect(result.total).toBeGreaterThan(before.total);
    expect(result.lines.reduce((sum, { points }) => sum + Math.round(points * 100), 0)).toBe(
      Math.round(result.total * 100),
    );
    expect(result.lines.filter(({ what }) => what.includes("Seen at the desk."))).toHaveLength(2);
    expect(detail.overrules.map(({ applies }) => applies)).toEqual([true, true]);
    for (const revision of [2, 3]) {
      const [first] = (await review()).debrief.overrules;
      await undoOverrule(school.iris, {
        sittingId: school.adaScored,
        baseRevision: revision,
        overruleId: first?.overruleId ?? "",
      });
    }
    expect(await readResult()).toEqual(before);
    expect((await review()).ended).toHaveLength(2);
  });

  it("takes the place of an earlier one about the same thing, which stays on record", async () => {
    await rule(SPARED);
    await rule({ kind: "cause", mark: "m1", cause: "echo" }, 1);
    const { debrief, ended } = await review();
    expect(debrief.overrules.map(({ ruling }) => ruling)).toEqual([
      { kind: "cause", mark: "m1", cause: "echo" },
    ]);
    expect(ended.map(({ ruling, endedBy }) => [ruling, endedBy])).toEqual([[SPARED, "Iris Instructor"]]);
    await expect(
      getDatabase().overrule.update({ where: { id: ended[0]?.overruleId ?? "" }, data: { reason: "x" } }),
    ).rejects.toThrow();
  });

  it("is refused without a reason, and about what is not there", async () => {
    const { iris, adaScored: sittingId } = school;
    const bare = { sittingId, baseRevision: 0, ruling: SPARED, reason: "  " };
    await expect(overrule(iris, bare)).rejects.toMatchObject({ faults: [{ path: "reason" }] });
    for (const [ruling, path] of [
      [{ kind: "cause", mark: "m9", cause: null }, "ruling.mark"],
      [{ ...TOGETHER, reference: "r9" }, "ruling.reference"],
      [{ kind: "grade", property: "polish", credit: 1 }, "ruling.property"],
    ] as const) {
      await expect(rule(ruling)).rejects.toMatchObject({ faults: [{ path }] });
    }
    expect((await review()).revision).toBe(0);
  });

  it("waits for a rescore where the stone's cut was changed since", async () => {
    const body = { cut: "round-brilliant" as const, proportions: { tablePct: 60 } };
    const stoneId = school.stoneIds[0];
    await updateStone(school.iris, { stoneId, label: "T-1", body, revision: 1 });
    await expect(rule(SPARED)).rejects.toMatchObject({ code: "conflict" });
    expect((await review()).locked).not.toBeNull();
    await rescoreAll();
    await rule(SPARED);
    expect((await review()).locked).toBeNull();
  });
});

describe("a rescore", () => {
  it("keeps overrules, and shows what it would change with them in", async () => {
    const { iris, exerciseId, adaScored } = school;
    await rule(TOGETHER);
    await saveRubric(iris, { exerciseId, baseVersion: 1, rubric: LENIENT_RUBRIC });
    // Overruled by the rubric of the result that stands: an overrule is no rescore.
    await rule(GRADE, 1);
    expect((await review()).debrief.rubricVersion).toBe(1);
    await rescoreAll();
    const { debrief } = await review();
    expect(debrief.rubricVersion).toBe(2);
    expect(debrief.overrules.map(({ applies }) => applies)).toEqual([true, true]);
    expect(debrief.result.found.map(({ reference }) => reference)).toEqual(["reference-secret-1"]);
    expect(
      (await getReviewGrid(iris, exerciseId)).cells.find((c) => c.sittingId === adaScored)?.overrules,
    ).toBe(2);
  });

  it("that waits follows an overrule made meanwhile, so that what was looked at is what is applied", async () => {
    const { iris, exerciseId, adaScored } = school;
    await saveRubric(iris, { exerciseId, baseVersion: 1, rubric: LENIENT_RUBRIC });
    const { rescoreId } = await startRescore(iris, { exerciseId });
    await runRescore(rescoreId);
    await rule(TOGETHER);
    const { job } = await getRescore(iris, exerciseId);
    const shown = job?.rows.find(({ sittingId }) => sittingId === adaScored)?.after;
    await applyRescore(iris, { rescoreId });
    const { result, overrules } = (await review()).debrief;
    expect(result.total).toBe(shown);
    expect(overrules.map(({ applies }) => applies)).toEqual([true]);
  });

  it("by a reference without the mark lists the overrule as no longer applying, and applies it again later", async () => {
    const stoneId = school.stoneIds[0];
    await rule(TOGETHER);
    const { total } = await readResult();
    const without = { ...REFERENCE, marks: REFERENCE.marks.slice(1) };
    await saveReference(school.iris, { stoneId, baseVersion: 1, reference: without, note: "" });
    await rescoreAll();
    const { overrules } = (await review()).debrief;
    expect(overrules).toMatchObject([{ applies: false, why: "the reference no longer has this mark" }]);
    await saveReference(school.iris, { stoneId, baseVersion: 2, reference: REFERENCE, note: "" });
    await rescoreAll();
    expect((await review()).debrief.overrules).toMatchObject([{ applies: true }]);
    expect((await readResult()).total).toBe(total);
  });
});

describe("two who review at once", () => {
  it("the second is told who changed what, and writes it once they have seen it", async () => {
    await rule(SPARED);
    const late = rule(GRADE, 0, school.director);
    await expect(late).rejects.toMatchObject({ code: "conflict" });
    const thrown = await late.catch((error: unknown) => error);
    expect(isAppError(thrown) && thrown.message).toContain("Iris Instructor overruled the cause of mark m1");
    expect((await review()).debrief.overrules).toHaveLength(1);
    await rule(GRADE, 1, school.director);
    expect((await review()).debrief.overrules.map(({ byName }) => byName)).toEqual([
      "Iris Instructor",
      "Dora Director",
    ]);
  });

  it("at the same moment: one of them is written, whole", async () => {
    const settled = await Promise.allSettled([rule(SPARED), rule(GRADE, 0, school.director), comment(0)]);
    expect(settled.filter(({ status }) => status === "fulfilled")).toHaveLength(1);
    const { revision, debrief } = await review();
    expect([revision, debrief.overrules.length + debrief.comments.length]).toEqual([1, 1]);
    expect(await getDatabase().reviewStep.count()).toBe(1);
  });
});

describe("a comment", () => {
  it("is changed and deleted by its author alone, and its text is gone then", async () => {
    const { commentId } = await comment(0);
    await comment(1, "Look at 3 o'clock.", commentId);
    const sittingId = school.adaScored;
    const at = { sittingId, commentId, subject: null, baseRevision: 2 };
    await expect(writeComment(school.director, { ...at, text: "x" })).rejects.toMatchObject({
      code: "not-found",
    });
    const [own] = (await review()).debrief.comments;
    expect(own).toMatchObject({ text: "Look at 3 o'clock.", subject: "mark:m1" });
    await deleteComment(school.iris, { sittingId, baseRevision: 2, commentId });
    expect((await review()).debrief.comments).toEqual([]);
    expect((await getDatabase().reviewComment.findFirstOrThrow()).text).toBe("");
  });
});

describe("the student", () => {
  it("is told nothing before the release, not even by a count, and all that applies after it", async () => {
    const { ada, iris, adaScored } = school;
    const read = async () =>
      JSON.stringify([await listMyExercises(ada), await exportPersonData(ada, ada.userId)]);
    const strip = (text: string) => text.replace(/"madeAt":"[^"]+"/, "");
    const before = await read();
    await rule(TOGETHER);
    await comment(1);
    expect(strip(await read())).toBe(strip(before));
    await expect(getDebrief(ada, adaScored)).rejects.toMatchObject({ code: "not-found" });
    await releaseDebriefs(iris, { sittingIds: [adaScored] });
    const debrief = await getDebrief(ada, adaScored);
    expect(debrief.overrules).toMatchObject([{ reason: "Seen at the desk.", byName: "Iris Instructor" }]);
    expect(debrief.comments).toMatchObject([{ text: "Look at 2 o'clock." }]);
    expect(await read()).toContain("Seen at the desk.");
  });

  it("erased, takes the words with them: of overrules, of comments, and in results", async () => {
    const { ada, director } = school;
    await rule(TOGETHER);
    await rule(GRADE, 1);
    await comment(2);
    const before = await readEverywhere();
    await erasePerson(director, { userId: ada.userId });
    const rows = [
      await getDatabase().overrule.findMany(),
      await getDatabase().reviewComment.findMany(),
      await getDatabase().result.findMany(),
      await getDatabase().trailEntry.findMany(),
      await getDatabase().reviewStep.findMany(),
    ];
    expect(JSON.stringify(rows)).not.toMatch(/Seen at the desk|2 o'clock/);
    expect(await readEverywhere()).toEqual(before);
  });
});

describe("a stray taken into the reference", () => {
  const accept = (baseVersion = 1) =>
    acceptStray(school.iris, {
      sittingId: school.adaScored,
      markId: "m1",
      baseVersion,
      extent: { kind: "round", across: 0.02 },
      as: { kind: "mark", characteristic: "crystal", optional: false },
    });

  it("is a mark of a new version, and the rescore that is offered finds it", async () => {
    const [exercise] = await listTouchedExercises(school.iris, school.stoneIds[0]);
    expect(exercise?.older).toBe(0);
    expect(await accept()).toMatchObject({ version: 2 });
    const [touched] = await listTouchedExercises(school.iris, school.stoneIds[0]);
    expect(touched?.older).toBe(2);
    expect((await readResult()).strays).toHaveLength(1);
    await rescoreAll();
    expect((await readResult()).found).toMatchObject([{ reference: "v2", mark: "m1", location: 1 }]);
    await expect(accept(2)).rejects.toMatchObject({ code: "conflict" });
  });

  it("is refused where somebody saved a version meanwhile", async () => {
    await saveReference(school.iris, {
      stoneId: school.stoneIds[0],
      baseVersion: 1,
      reference: REFERENCE,
      note: "",
    });
    await expect(accept()).rejects.toMatchObject({ code: "conflict" });
  });
});
