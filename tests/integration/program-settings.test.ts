/** The rubric that a new exercise starts with: who changes it, what it reaches, and what it leaves alone. */
import { describe, expect, it } from "vitest";
import { getProgramSettings } from "@/lib/data/get-program-settings";
import { getRubricBench } from "@/lib/data/get-rubric-bench";
import { getRubricDefaults } from "@/lib/data/get-rubric-defaults";
import { listTrail } from "@/lib/data/list-trail";
import { getDatabase } from "@/lib/data/store/database";
import { DEFAULT_RUBRIC, type Rubric } from "@/lib/plot/rubric";
import { createExercise } from "@/lib/workflows/create-exercise";
import { updateProgramSettings } from "@/lib/workflows/update-program-settings";
import { buildSchool, makeOpenDates, type School } from "@/tests/support/school";
import { standUpSchool } from "@/tests/support/stand-up-school";

let school: School;
standUpSchool(async () => {
  school = await buildSchool();
});

const OURS: Rubric = {
  ...DEFAULT_RUBRIC,
  near: 0.04,
  shares: { plot: 50, clarity: 40, otherGrades: 10 },
  gradeCredit: [1, 0.5],
};

const save = (rubric: Rubric, baseRevision = 0) =>
  updateProgramSettings(school.director, { baseRevision, rubric });

async function setAnother(rubric?: object): Promise<Rubric> {
  const { exerciseId } = await createExercise(school.iris, {
    title: "Another",
    notes: "",
    rules: {},
    ...makeOpenDates(),
    sectionId: school.sectionId,
    stoneIds: [...school.stoneIds],
    ...(rubric === undefined ? {} : { rubric }),
  });
  return (await getRubricBench(school.iris, exerciseId)).rubric;
}

/** Gives the tray the rubric of an imported set. */
async function giveTray(rubric: object): Promise<void> {
  const where = { id: school.trayId };
  const { terms } = await getDatabase().tray.findUniqueOrThrow({ where });
  await getDatabase().tray.update({ where, data: { terms: { ...(terms as object), rubric } } });
}

const countRows = () =>
  Promise.all([getDatabase().programSettings.count(), getDatabase().trailEntry.count()]);

describe("the rubric defaults", () => {
  it("are Loupework's own numbers until they are changed", async () => {
    expect(await getProgramSettings(school.director)).toEqual({
      revision: 0,
      rubric: DEFAULT_RUBRIC,
      changed: null,
    });
    expect(await setAnother()).toEqual(DEFAULT_RUBRIC);
  });

  it("are what a new exercise starts with, and what its form and the rubric's editor show", async () => {
    expect(await save(OURS)).toEqual({ revision: 1 });
    expect(await getProgramSettings(school.director)).toMatchObject({
      revision: 1,
      rubric: OURS,
      changed: { byName: school.director.name },
    });
    expect(await getRubricDefaults(school.iris)).toEqual(OURS);
    expect((await getRubricBench(school.iris, school.exerciseId)).defaults).toEqual(OURS);
    expect(await setAnother()).toEqual(OURS);
    expect(await setAnother({ orientation: "given" })).toEqual({ ...OURS, orientation: "given" });
  });

  it("leave exercises that are set, and their results, as they were", async () => {
    const read = () =>
      Promise.all([
        getDatabase().rubricVersion.findMany({ orderBy: { id: "asc" } }),
        getDatabase().result.findMany({ orderBy: { id: "asc" } }),
        getDatabase().exercise.findMany({ orderBy: { id: "asc" } }),
      ]);
    const before = await read();
    expect(before[1].length).toBeGreaterThan(0);
    await save(OURS);
    expect(await read()).toEqual(before);
  });

  it("give way to the numbers of a set, and to what is bound to them", async () => {
    await save(OURS);
    await giveTray({ shares: { plot: 60, clarity: 30 }, deductions: { dust: 9 } });
    expect(await setAnother()).toEqual({
      ...OURS,
      shares: { plot: 60, clarity: 30, otherGrades: 10 },
      deductions: { ...OURS.deductions, dust: 9 },
    });
    await giveTray({ far: 0.035 });
    expect(await setAnother()).toEqual({ ...OURS, near: DEFAULT_RUBRIC.near, far: 0.035 });
  });

  it("go back to Loupework's own by being set to them", async () => {
    await save(OURS);
    expect(await save(DEFAULT_RUBRIC, 1)).toEqual({ revision: 2 });
    expect(await getProgramSettings(school.director)).toMatchObject({ revision: 2, rubric: DEFAULT_RUBRIC });
    const row = await getDatabase().programSettings.findFirstOrThrow();
    // Not a copy of them: a later release's numbers hold then.
    expect(row.body).toEqual({ rubric: null });
  });
});

describe("a change of the defaults", () => {
  it("stands in the trail with what was changed from what to what", async () => {
    await save(OURS);
    await save({ ...OURS, near: 0.05 }, 1);
    const { rows } = await listTrail(school.director, { page: 1 });
    expect(rows.slice(0, 2)).toMatchObject([
      {
        actorName: school.director.name,
        action: "update-program-settings",
        detail: "Rubric defaults. When a mark is in the right place: Full credit within 0.04 → 0.05",
      },
      {
        detail:
          "Rubric defaults. What the points are for: The plot 70 pts → 50 pts, The clarity grade 20 pts → 40 pts; " +
          "When a mark is in the right place: Full credit within 0.03 → 0.04; " +
          "Credit for a grade: By steps away 100, 60, 20, 0 % → 100, 50 %",
      },
    ]);
  });

  it("that changes nothing writes nothing", async () => {
    const before = await countRows();
    expect(await save(DEFAULT_RUBRIC)).toEqual({ revision: 0 });
    expect(await countRows()).toEqual(before);
  });

  it("from an older revision is refused, and what the other director saved stays", async () => {
    await save(OURS);
    const before = await countRows();
    await expect(save({ ...DEFAULT_RUBRIC, near: 0.01 })).rejects.toMatchObject({ code: "conflict" });
    expect(await countRows()).toEqual(before);
    expect((await getProgramSettings(school.director)).rubric).toEqual(OURS);
  });

  it("goes to one of two directors who save at once", async () => {
    const ended = await Promise.allSettled([save(OURS), save({ ...OURS, near: 0.02 })]);
    expect(ended.map(({ status }) => status).sort()).toEqual(["fulfilled", "rejected"]);
    expect(await getDatabase().programSettings.count()).toBe(1);
  });

  it.each([
    ["rubric.far", { ...OURS, far: 0.01 }],
    ["rubric.shares", { ...OURS, shares: { ...OURS.shares, plot: 51 } }],
    ["rubric.near", { ...OURS, near: 2 }],
    ["rubric.nearer", { ...OURS, nearer: 1 }],
  ])("with a fault at %s is refused there, and nothing is written", async (path, rubric) => {
    const before = await countRows();
    await expect(save(rubric as Rubric)).rejects.toMatchObject({ code: "bad-input", faults: [{ path }] });
    expect(await countRows()).toEqual(before);
  });

  it("cannot be kept in a second row", async () => {
    await save(OURS);
    await expect(
      getDatabase().programSettings.create({
        data: { id: "other", body: { rubric: null }, revision: 1, changedById: school.director.userId },
      }),
    ).rejects.toThrow(/CHECK constraint/);
  });
});
