/** Extensions, attempts, retakes, order and hidden labels, as they hold for one student and nobody else. */
import { describe, expect, it } from "vitest";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { getBench } from "@/lib/data/get-bench";
import { getDebrief } from "@/lib/data/get-debrief";
import { getReview } from "@/lib/data/get-review";
import { getReviewGrid } from "@/lib/data/get-review-grid";
import { getWorksheets } from "@/lib/data/get-worksheets";
import { listMyExercises } from "@/lib/data/list-my-exercises";
import { listWatch } from "@/lib/data/list-watch";
import { getDatabase } from "@/lib/data/store/database";
import { claimBench } from "@/lib/workflows/claim-bench";
import { createStone } from "@/lib/workflows/create-stone";
import { exportGradebook } from "@/lib/workflows/export-gradebook";
import { getProgress } from "@/lib/workflows/get-progress";
import { getSectionReport } from "@/lib/workflows/get-section-report";
import { grantExtension } from "@/lib/workflows/grant-extension";
import { grantRetake } from "@/lib/workflows/grant-retake";
import { handIn } from "@/lib/workflows/hand-in";
import { listRetakeStones } from "@/lib/workflows/list-retake-stones";
import { openSitting } from "@/lib/workflows/open-sitting";
import { releaseDebriefs } from "@/lib/workflows/release-debriefs";
import { releaseDue } from "@/lib/workflows/release-due";
import { saveReference } from "@/lib/workflows/save-reference";
import { scoreHandIn } from "@/lib/workflows/score-hand-in";
import { withdrawRelease } from "@/lib/workflows/withdraw-release";
import { DATA_CASES } from "@/tests/access/data-cases";
import { WORKFLOW_CASES } from "@/tests/access/workflow-cases";
import { buildSchool, DAY_MS, plot, type School, WRITER } from "@/tests/support/school";
import { addDesk } from "@/tests/support/school-desk";
import { REFERENCE } from "@/tests/support/school-marks";
import { standUpSchool } from "@/tests/support/stand-up-school";

let school: School;
let thirdStoneId: string;
standUpSchool(async () => {
  school = await addDesk(await buildSchool());
  const body = { cut: "round-brilliant" as const, proportions: { tablePct: 57 } };
  const { stoneId } = await createStone(school.iris, { trayId: school.trayId, label: "T-3", body });
  await saveReference(school.iris, { stoneId, baseVersion: 0, reference: REFERENCE, note: "" });
  thirdStoneId = stoneId;
});

const setRules = (rules: object) =>
  getDatabase().exercise.update({ where: { id: school.exerciseId }, data: { rules } });
const setDates = (days: { due: number; closes: number }) =>
  getDatabase().exercise.update({
    where: { id: school.exerciseId },
    data: {
      opensAt: new Date(Date.now() - 9 * DAY_MS),
      dueAt: new Date(Date.now() + days.due * DAY_MS),
      closesAt: new Date(Date.now() + days.closes * DAY_MS),
    },
  });
const inDays = (days: number) => new Date(Date.now() + days * DAY_MS).toISOString();
const extend = (student: Viewer, part: object) =>
  grantExtension(school.iris, {
    exerciseId: school.exerciseId,
    studentId: student.userId,
    dueAt: null,
    closesAt: null,
    extraAttempts: 0,
    reason: "was ill",
    ...part,
  });
const findMine = async (student: Viewer) => {
  const [mine] = await listMyExercises(student);
  if (mine === undefined) throw new Error("nothing is set");
  return mine;
};
const finish = async (student: Viewer, sittingId: string, lastSeq = 2) => {
  const { handInId } = await handIn(student, { sittingId, writerId: WRITER, lastSeq });
  await scoreHandIn(handInId);
};
const [FIRST, SECOND] = [0, 1] as const;
const place = (index: 0 | 1) => school.exerciseStoneIds[index];
const retake = (student: Viewer, stoneId: string | null) =>
  grantRetake(school.iris, {
    exerciseId: school.exerciseId,
    exerciseStoneId: place(FIRST),
    studentId: student.userId,
    stoneId,
    reason: "the stone was dirty",
  });

describe("an extension", () => {
  it("keeps a closed exercise open for its student alone: to open, save, hand in, print and be watched", async () => {
    await setDates({ due: -3, closes: -1 });
    await expect(openSitting(school.ben, { exerciseStoneId: place(SECOND) })).rejects.toMatchObject({
      code: "closed",
    });
    await extend(school.ben, { dueAt: inDays(2) });
    expect((await findMine(school.ben)).phase).toBe("open");
    expect((await findMine(school.ada)).phase).toBe("closed");
    await expect(finish(school.ada, school.adaOnBench)).rejects.toMatchObject({ code: "closed" });
    const sittingId = await plot(school.ben, place(SECOND), 0.1);
    const bench = await getBench(school.ben, sittingId);
    expect(Date.parse(bench.dueAt)).toBeGreaterThan(Date.now());
    expect(bench.closesAt).toBe(bench.dueAt);
    expect((await getWorksheets(school.ben, school.exerciseId)).stones).toHaveLength(2);
    await expect(getWorksheets(school.ada, school.exerciseId)).rejects.toMatchObject({ code: "closed" });
    const watched = (await listWatch(school.iris)).rows.map((row) => row.sittingId);
    expect(watched).toContain(sittingId);
    expect(watched).not.toContain(school.adaOnBench);
    await finish(school.ben, sittingId);
  });

  it("counts in the gradebook and in who needs a word", async () => {
    await setDates({ due: -1, closes: 5 });
    await extend(school.ben, { dueAt: inDays(2) });
    const { extensions } = await exportGradebook(school.iris, school.sectionId);
    expect(extensions.map(({ studentId }) => studentId)).toEqual([school.ben.userId]);
    const { students } = await getSectionReport(school.iris, { sectionId: school.sectionId });
    const dueOf = new Map(students.map(({ name, due }) => [name, due]));
    expect([dueOf.get("Ben Student"), dueOf.get("Ada Student")]).toEqual([0, 2]);
  });

  it("is never earlier than for everybody, and its reason is not in the trail", async () => {
    await setDates({ due: 3, closes: 5 });
    await expect(extend(school.ben, { dueAt: inDays(1) })).rejects.toMatchObject({
      code: "bad-input",
      faults: [{ path: "dueAt" }],
    });
    await extend(school.ben, { extraAttempts: 1 });
    const entry = await getDatabase().trailEntry.findFirstOrThrow({ where: { action: "grant-extension" } });
    expect(JSON.stringify(entry)).not.toContain("was ill");
  });
});

describe("attempts", () => {
  it("are as many as the rules give, and the latest stands in the grid", async () => {
    const again = { exerciseStoneId: place(FIRST), attempt: 2 };
    await expect(openSitting(school.ada, again)).rejects.toMatchObject({ code: "closed" });
    await setRules({ attempts: 2 });
    expect((await findMine(school.ada)).stones[0]).toMatchObject({ attempt: 1, attemptsLeft: 1 });
    expect(await openSitting(school.ada, { exerciseStoneId: place(FIRST) })).toEqual({
      sittingId: school.adaScored,
    });
    const { sittingId } = await openSitting(school.ada, again);
    expect(await openSitting(school.ada, again)).toEqual({ sittingId });
    expect((await findMine(school.ada)).stones[0]).toMatchObject({
      attempt: 2,
      attemptsLeft: 0,
      state: "on-the-bench",
    });
    const grid = await getReviewGrid(school.iris, school.exerciseId);
    expect(grid.cells.find((cell) => cell.sittingId === sittingId)).toMatchObject({ attempt: 2 });
    // Ben has read the debrief of the stone.
    await expect(openSitting(school.ben, again)).rejects.toMatchObject({ code: "closed" });
  });

  it("keep the debrief of an earlier one closed while the stone is on the bench again, and not after", async () => {
    await setRules({ attempts: 2 });
    const { sittingId } = await openSitting(school.ada, { exerciseStoneId: place(FIRST), attempt: 2 });
    await releaseDebriefs(school.iris, { sittingIds: [school.adaScored] });
    const readFirst = () => getDebrief(school.ada, school.adaScored);
    await expect(readFirst()).rejects.toMatchObject({ code: "not-found" });
    expect((await findMine(school.ada)).stones[0]).toMatchObject({ earlierDebriefId: null });
    expect((await getDebrief(school.iris, school.adaScored)).sittingId).toBe(school.adaScored);
    const readClosed = async () => {
      const { stones } = await getProgress(school.ada, { studentId: school.ada.userId });
      return stones.filter(({ isClosed }) => isClosed).map(({ sittingId }) => sittingId);
    };
    expect(await readClosed()).toEqual([school.adaScored]);

    await setDates({ due: -3, closes: -1 });
    expect((await readFirst()).sittingId).toBe(school.adaScored);
    await setDates({ due: 3, closes: 5 });
    await claimBench(school.ada, { sittingId, writerId: WRITER, takeOver: true });
    await finish(school.ada, sittingId, 0);
    expect((await readFirst()).sittingId).toBe(school.adaScored);
    expect(await readClosed()).toEqual([]);
    expect((await findMine(school.ada)).stones[0]).toMatchObject({ earlierDebriefId: school.adaScored });
  });
});

describe("a retake", () => {
  it("is offered on a stone that the student has not sat, with the reason why", async () => {
    const offered = await listRetakeStones(school.iris, {
      exerciseId: school.exerciseId,
      exerciseStoneId: place(FIRST),
      studentId: school.ada.userId,
    });
    expect(offered.map(({ label }) => label)).toEqual(["T-3"]);
    expect(offered[0]?.because).toContain("T-1");
  });

  it("on another stone is that student's alone, and counts in place of the first", async () => {
    await retake(school.ada, thirdStoneId);
    await expect(retake(school.ada, null)).rejects.toMatchObject({ code: "conflict" });
    const mine = (await findMine(school.ada)).stones.at(-1);
    expect(mine).toMatchObject({ label: "T-3", isRetake: true, state: "not-begun", attemptsLeft: 1 });
    expect((await findMine(school.ben)).stones.map(({ label }) => label)).toEqual(["T-1", "T-2"]);
    const exerciseStoneId = mine?.exerciseStoneId ?? "";
    await expect(openSitting(school.ben, { exerciseStoneId })).rejects.toMatchObject({ code: "not-found" });
    const sittingId = await plot(school.ada, exerciseStoneId, 0.2);
    await finish(school.ada, sittingId);
    const grid = await getReviewGrid(school.iris, school.exerciseId);
    expect(grid.stones.map(({ label }) => label)).toEqual(["T-1", "T-2"]);
    expect(grid.exercise.stones).toBe(2);
    const cell = grid.cells.find((one) => one.sittingId === sittingId);
    expect(cell).toMatchObject({ exerciseStoneId: place(FIRST), retakeOn: "T-3", state: "scored" });
    // The attempt before it counts no more, but is reviewed and released by itself.
    const before = { sittingId: school.adaScored, label: "T-1" };
    expect(cell?.earlier).toEqual([{ ...before, state: "scored" }]);
    const { attempts } = await getReview(school.iris, sittingId);
    expect(attempts.map(({ label, state }) => [label, state])).toEqual([
      ["T-1", "scored"],
      ["T-3", "scored"],
    ]);
    expect(attempts.at(-1)).toMatchObject({ sittingId, points: cell?.total });
    await releaseDebriefs(school.iris, { sittingIds: [before.sittingId] });
    expect((await getDebrief(school.ada, before.sittingId)).sittingId).toBe(before.sittingId);
    await expect(getDebrief(school.ada, sittingId)).rejects.toMatchObject({ code: "not-found" });
    const first = await getReview(school.iris, before.sittingId);
    expect(first.attempts.map(({ state }) => state)).toEqual(["released", "scored"]);
    await withdrawRelease(school.iris, { sittingIds: [before.sittingId] });
    await expect(getDebrief(school.ada, before.sittingId)).rejects.toMatchObject({ code: "not-found" });

    const { entries } = await exportGradebook(school.iris, school.sectionId);
    const entry = entries.find(({ studentId }) => studentId === school.ada.userId);
    expect(entry).toMatchObject({ handedIn: 1, scored: 1, hundredths: Math.round((cell?.total ?? 0) * 100) });
    await retake(school.ada, null);
  });

  it("on the same stone goes though its debrief is released, once", async () => {
    await retake(school.ben, null);
    const again = { exerciseStoneId: place(FIRST), attempt: 2 };
    const { sittingId } = await openSitting(school.ben, again);
    await finish(school.ben, sittingId, 0);
    const third = openSitting(school.ben, { ...again, attempt: 3 });
    await expect(third).rejects.toMatchObject({ code: "closed" });
    expect((await findMine(school.ben)).stones[0]?.earlierDebriefId).toBe(school.benReleased);
  });

  it("is of what was handed in, on a stone under the same scales", async () => {
    const missing = { exerciseId: school.exerciseId, studentId: school.ben.userId, stoneId: null };
    await expect(
      grantRetake(school.iris, { ...missing, exerciseStoneId: place(SECOND) }),
    ).rejects.toMatchObject({
      code: "conflict",
    });
    await expect(retake(school.ada, "no-such-stone")).rejects.toMatchObject({ code: "bad-input" });
    await expect(retake(school.ada, school.stoneIds[1])).rejects.toMatchObject({ code: "conflict" });
    await expect(retake(school.cyd, null)).rejects.toMatchObject({ code: "not-found" });
  });
});

describe("debriefs that open by themselves", () => {
  const setMoment = (debriefsAt: Date) =>
    getDatabase().exercise.update({ where: { id: school.exerciseId }, data: { debriefsAt } });

  it("open at their moment and not before, once scored, and stay as staff left them", async () => {
    await setMoment(new Date(Date.now() + DAY_MS));
    expect(await releaseDue()).toEqual({ released: 0 });
    await expect(getDebrief(school.ada, school.adaScored)).rejects.toMatchObject({ code: "not-found" });
    await withdrawRelease(school.iris, { sittingIds: [school.benReleased] });
    await setMoment(new Date(Date.now() - 1000));
    expect(await releaseDue()).toEqual({ released: 1 });
    expect((await getDebrief(school.ada, school.adaScored)).sittingId).toBe(school.adaScored);
    await expect(getDebrief(school.ben, school.benReleased)).rejects.toMatchObject({ code: "not-found" });
    expect(await releaseDue()).toEqual({ released: 0 });
    await finish(school.ada, school.adaOnBench);
    expect(await releaseDue()).toEqual({ released: 1 });
    const entry = await getDatabase().trailEntry.findFirstOrThrow({
      where: { action: "release-debrief" },
      orderBy: { id: "desc" },
    });
    expect(entry).toMatchObject({ actorId: null, subjectId: school.adaOnBench });
  });
});

describe("one after the other", () => {
  it("opens a stone once the one before it is handed in", async () => {
    await setRules({ isInOrder: true });
    await getDatabase().handIn.count();
    const student = school.ben;
    expect((await findMine(student)).stones[1]).toMatchObject({ opensAfter: null });
    await getDatabase().enrolment.create({
      data: { sectionId: school.sectionId, studentId: school.cyd.userId },
    });
    const mine = (await listMyExercises(school.cyd)).find((one) => one.exerciseId === school.exerciseId);
    expect(mine?.stones.map(({ opensAfter }) => opensAfter)).toEqual([null, "T-1"]);
    const early = openSitting(school.cyd, { exerciseStoneId: place(SECOND) });
    await expect(early).rejects.toMatchObject({ code: "closed" });
    await finish(school.cyd, await plot(school.cyd, place(FIRST), 0.3));
    await openSitting(school.cyd, { exerciseStoneId: place(SECOND) });
  });
});

describe("hidden labels", () => {
  const hide = () =>
    getDatabase().exercise.updateMany({ data: { rules: { areLabelsHidden: true, isInOrder: true } } });
  const receive = async (call: () => Promise<unknown>) => {
    try {
      return JSON.stringify((await call()) ?? null);
    } catch (thrown) {
      if (!(thrown instanceof AppError)) throw thrown;
      return JSON.stringify([thrown.code, thrown.message, thrown.faults]);
    }
  };

  it.each(["ada", "ben", "cyd"] as const)("%s receives no label from any function", async (student) => {
    await hide();
    await releaseDebriefs(school.iris, { sittingIds: [school.adaScored] });
    let seen = 0;
    for (const [name, { call }] of Object.entries({ ...DATA_CASES, ...WORKFLOW_CASES })) {
      const text = await receive(() => call(school[student], school));
      expect(text, name).not.toMatch(/T-[123]/);
      seen += text.split("Stone ").length - 1;
    }
    expect(seen, "the stones are named all the same").toBeGreaterThan(0);
  });

  it("are one name everywhere for one student, and staff see the labels", async () => {
    await hide();
    const mine = (await findMine(school.ada)).stones.find(({ exerciseStoneId }) =>
      [place(SECOND)].includes(exerciseStoneId),
    );
    expect(mine?.label).toMatch(/^Stone [12]$/);
    expect((await getBench(school.ada, school.adaOnBench)).stone.label).toBe(mine?.label);
    const grid = await getReviewGrid(school.iris, school.exerciseId);
    expect(grid.stones.map(({ label }) => label)).toEqual(["T-1", "T-2"]);
    const sheets = await getWorksheets(school.ada, school.exerciseId);
    expect(sheets.stones.map(({ label }) => label)).toEqual(["Stone 1", "Stone 2"]);
  });
});
