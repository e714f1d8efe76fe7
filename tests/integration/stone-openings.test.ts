/** A stone that opens later than its exercise: what a student sees and may do before, and what staff may set. */
import { beforeEach, describe, expect, it } from "vitest";
import { exportExerciseSet } from "@/lib/data/export-exercise-set";
import { findMyScannedStone } from "@/lib/data/find-my-scanned-stone";
import { getPhotoFile } from "@/lib/data/get-photo-file";
import { getReviewGrid } from "@/lib/data/get-review-grid";
import { getStoneToCheck } from "@/lib/data/get-stone-to-check";
import { getWorksheets } from "@/lib/data/get-worksheets";
import { listMyExercises } from "@/lib/data/list-my-exercises";
import { previewBench, previewMyExercise } from "@/lib/data/preview-exercise";
import { getDatabase } from "@/lib/data/store/database";
import { writeExerciseSet } from "@/lib/exchange/write-exercise-set";
import { toStoneCode } from "@/lib/plot/stone-code";
import { toMinuteWords } from "@/lib/plot/to-minute-words";
import { addPhoto } from "@/lib/workflows/add-photo";
import { createExercise } from "@/lib/workflows/create-exercise";
import { duplicateExercise } from "@/lib/workflows/duplicate-exercise";
import { openSitting } from "@/lib/workflows/open-sitting";
import { sendStoneCheck } from "@/lib/workflows/send-stone-check";
import { updateExercise } from "@/lib/workflows/update-exercise";
import { updatePhoto } from "@/lib/workflows/update-photo";
import { makePicture } from "@/tests/support/make-picture";
import { buildSchool, DAY_MS, makeOpenDates, type School } from "@/tests/support/school";
import { SEEN } from "@/tests/support/school-marks";
import { standUpSchool } from "@/tests/support/stand-up-school";

let school: School;
let photoId: string;
/** Of the second stone, which Ben has not begun. */
let exerciseStoneId: string;
let stoneId: string;
standUpSchool(async () => {
  school = await buildSchool();
  exerciseStoneId = school.exerciseStoneIds[1];
  stoneId = school.stoneIds[1];
  photoId = (await addPhoto(school.iris, { stoneId, bytes: await makePicture() })).photoId;
  await updatePhoto(school.iris, { photoId, caption: "", isShown: true });
});

const inDays = (days: number) => new Date(Date.now() + days * DAY_MS).toISOString();
const setOpening = (opensAt: string | null) =>
  getDatabase().exerciseStone.update({ where: { id: exerciseStoneId }, data: { opensAt } });
const findMine = async () => {
  const [mine] = await listMyExercises(school.ben);
  return mine?.stones.find((one) => one.exerciseStoneId === exerciseStoneId);
};
/** Each way in which a student reaches the stone that lies before them. */
const WAYS: Readonly<Record<string, () => Promise<unknown>>> = {
  "open it": () => openSitting(school.ben, { exerciseStoneId }),
  "read it for the check": () => getStoneToCheck(school.ben, exerciseStoneId),
  "send a check": () => sendStoneCheck(school.ben, { exerciseStoneId, evidence: SEEN }),
  "see its photograph": () => getPhotoFile(school.ben, photoId, "small"),
};

describe("before it opens", () => {
  const at = inDays(0.5);
  beforeEach(async () => {
    await setOpening(at);
  });

  it("stands in the student's list with its date, and takes no attempt", async () => {
    expect(await findMine()).toMatchObject({ state: "not-begun", opensAt: at, attemptsLeft: 0 });
  });

  it.each(Object.keys(WAYS))("nobody can %s, though the exercise is open", async (name) => {
    await expect(WAYS[name]?.()).rejects.toMatchObject({
      code: name === "open it" ? "closed" : "not-found",
    });
    expect(
      await getDatabase().sitting.count({ where: { exerciseStoneId, studentId: school.ben.userId } }),
    ).toBe(0);
  });

  it("the refusal says when it opens", async () => {
    await expect(WAYS["open it"]?.()).rejects.toThrow(`This stone opens on ${toMinuteWords(new Date(at))}.`);
  });

  it("its label leads nowhere and its worksheet is not printed, save for staff", async () => {
    expect(await findMyScannedStone(school.ben, toStoneCode(stoneId))).toBeNull();
    const labelsFor = async (who: "ben" | "iris") =>
      (await getWorksheets(school[who], school.exerciseId)).stones.map(({ label }) => label);
    expect(await labelsFor("ben")).toEqual(["T-1"]);
    expect(await labelsFor("iris")).toEqual(["T-1", "T-2"]);
  });

  it("leaves the other stone of the exercise open", async () => {
    const { stone } = await getStoneToCheck(school.ben, school.exerciseStoneIds[0]);
    expect(stone.label).toBe("T-1");
  });

  it("is told in the preview, which shows the bench all the same", async () => {
    const preview = await previewMyExercise(school.iris, school.exerciseId);
    expect(preview.stones.map(({ opensAt }) => opensAt)).toEqual([null, at]);
    expect((await previewBench(school.iris, school.exerciseId, exerciseStoneId)).view.stone.label).toBe(
      "T-2",
    );
    const grid = await getReviewGrid(school.iris, school.exerciseId);
    expect(grid.stones.map(({ opensAt }) => opensAt)).toEqual([null, at]);
  });

  it("is named after the others where labels are hidden, so that it holds none of them up", async () => {
    const rules = { areLabelsHidden: true, isInOrder: true };
    await getDatabase().exercise.update({ where: { id: school.exerciseId }, data: { rules } });
    for (const [late, label] of [
      [exerciseStoneId, "Stone 2"],
      [school.exerciseStoneIds[0], "Stone 2"],
    ]) {
      await getDatabase().exerciseStone.updateMany({ data: { opensAt: null } });
      await getDatabase().exerciseStone.update({ where: { id: late ?? "" }, data: { opensAt: at } });
      const [mine] = await listMyExercises(school.ben);
      expect(mine?.stones.find((one) => one.exerciseStoneId === late)?.label).toBe(label);
    }
  });
});

describe("once it has opened", () => {
  it.each(Object.keys(WAYS))("one can %s", async (name) => {
    await setOpening(inDays(-0.1));
    await WAYS[name]?.();
    expect((await findMine())?.opensAt ?? null).toBeNull();
  });

  it("its label leads to it and its worksheet is there", async () => {
    await setOpening(inDays(-0.1));
    expect(await findMyScannedStone(school.ben, toStoneCode(stoneId))).toBe(exerciseStoneId);
    expect((await getWorksheets(school.ben, school.exerciseId)).stones).toHaveLength(2);
  });
});

describe("what staff set", () => {
  const dates = makeOpenDates();
  const change = async (stoneOpenings: Record<string, string>) => {
    const { revision } = await getDatabase().exercise.findUniqueOrThrow({ where: { id: school.exerciseId } });
    return updateExercise(school.iris, {
      ...dates,
      exerciseId: school.exerciseId,
      revision,
      title: "First look",
      rules: {},
      stoneIds: [...school.stoneIds],
      stoneOpenings,
    } as Parameters<typeof updateExercise>[1]);
  };
  const readOpenings = async (exerciseId: string) =>
    (await getReviewGrid(school.iris, exerciseId)).stones.map(({ opensAt }) => opensAt);

  it("is kept, and taken away again", async () => {
    const past = inDays(-0.5);
    await change({ [stoneId]: past });
    expect(await readOpenings(school.exerciseId)).toEqual([null, past]);
    await change({});
    expect(await readOpenings(school.exerciseId)).toEqual([null, null]);
  });

  it.each([
    ["before the exercise opens", inDays(-2), "must not come before the exercise opens"],
    ["once it is due", dates.dueAt, "must come before the due date"],
  ])("is refused %s, with its place", async (_what, at, message) => {
    await expect(change({ [stoneId]: at })).rejects.toMatchObject({
      code: "bad-input",
      faults: [{ path: `stoneOpenings.${stoneId}`, message }],
    });
  });

  it("is refused of a stone that is not in the exercise, for a new one too", async () => {
    const input = { ...dates, sectionId: school.sectionId, title: "New", rules: {}, stoneIds: [stoneId] };
    const stoneOpenings = { [school.stoneIds[0]]: inDays(0.5) };
    const wrong = { ...input, stoneOpenings } as Parameters<typeof createExercise>[1];
    await expect(createExercise(school.iris, wrong)).rejects.toMatchObject({
      faults: [{ message: "is no stone of this exercise" }],
    });
  });

  it("does not close again what somebody has begun", async () => {
    await expect(change({ [stoneId]: inDays(0.5) })).rejects.toMatchObject({
      code: "conflict",
      message: "T-2 has been begun already; it cannot open later.",
    });
    expect(await readOpenings(school.exerciseId)).toEqual([null, null]);
  });

  it("moves with a copy, and is no part of the exercise set", async () => {
    const before = writeExerciseSet(await exportExerciseSet(school.iris, school.exerciseId));
    const { opensAt } = await getDatabase().exercise.findUniqueOrThrow({ where: { id: school.exerciseId } });
    await setOpening(new Date(opensAt.getTime() + DAY_MS / 2).toISOString());
    expect(writeExerciseSet(await exportExerciseSet(school.iris, school.exerciseId))).toBe(before);
    const { exerciseId } = await duplicateExercise(school.iris, {
      exerciseId: school.exerciseId,
      sectionId: school.sectionId,
      title: "Again",
      opensAt: "2027-02-01T08:00:00.000Z",
    });
    expect(await readOpenings(exerciseId)).toEqual([null, "2027-02-01T20:00:00.000Z"]);
  });
});
