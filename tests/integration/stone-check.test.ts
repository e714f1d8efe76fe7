/** The hand-in check through its doors: what staff are told, what stays flagged, and that a student learns nothing. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { getOverview } from "@/lib/data/get-overview";
import { getTray } from "@/lib/data/get-tray";
import { listStoneChecks } from "@/lib/data/list-stone-checks";
import { getDatabase } from "@/lib/data/store/database";
import type { PlottedMark } from "@/lib/plot/mark";
import { toReference } from "@/lib/plot/stone";
import { checkStone } from "@/lib/workflows/check-stone";
import { createExercise } from "@/lib/workflows/create-exercise";
import { importExerciseSet } from "@/lib/workflows/import-exercise-set";
import { judgeStoneChecks } from "@/lib/workflows/judge-stone-checks";
import { sendStoneCheck } from "@/lib/workflows/send-stone-check";
import { settleStoneCheck } from "@/lib/workflows/settle-stone-check";
import { createTestDatabase, type TestDatabase } from "@/tests/support/database";
import { listExerciseSets } from "@/tests/support/list-exercise-sets";
import { buildSchool, makeOpenDates, type School } from "@/tests/support/school";
import { makeMark } from "@/tests/support/school-marks";

let database: TestDatabase;
let school: School;
let trayId: string;
let stones: Map<string, string>;
let exerciseStones: Map<string, string>;
const firstLook = listExerciseSets().find(({ name }) => name === "first-look.json");

beforeAll(async () => {
  database = await createTestDatabase();
  school = await buildSchool();
  const json = JSON.parse(firstLook?.text ?? "");
  ({ trayId } = await importExerciseSet(school.iris, { json, trayName: "Demo" }));
  const rows = await getDatabase().stone.findMany({ where: { trayId } });
  stones = new Map(rows.map(({ id, label }) => [label, id]));
  const { exerciseId } = await createExercise(school.iris, {
    sectionId: school.sectionId,
    title: "Check",
    notes: "",
    ...makeOpenDates(),
    rules: {},
    stoneIds: rows.map(({ id }) => id),
  } as Parameters<typeof createExercise>[1]);
  const places = await getDatabase().exerciseStone.findMany({
    where: { exerciseId },
    include: { stone: true },
  });
  exerciseStones = new Map(places.map(({ id, stone }) => [stone.label, id]));
});
afterAll(() => database.remove());

/** Three features of a demo stone as they lie on it. */
function see(label: string) {
  const stone = firstLook?.resolved.set.stones.find(({ id }) => id === label);
  if (stone === undefined) throw new Error("no such stone");
  const marks = toReference(stone)
    .marks.slice(0, 3)
    .map(({ id, view, characteristic, shape }): PlottedMark => ({ id, view, characteristic, shape }));
  return { marks, weightCt: null, isHeldByLandmark: true };
}
const cut = "round-brilliant" as const;
const idOf = (label: string) => stones.get(label) ?? "";

describe("staff", () => {
  it("are told of a swapped stone, and it stays flagged until somebody has settled it", async () => {
    const { iris, otto } = school;
    const right = await checkStone(iris, {
      trayId,
      stoneId: idOf("A-03"),
      evidence: { ...see("A-03"), cut },
    });
    expect(right.verdict).toMatchObject({ outcome: "fits" });
    const wrong = await checkStone(iris, {
      trayId,
      stoneId: idOf("A-05"),
      evidence: { ...see("A-03"), cut },
    });
    expect(wrong.verdict).toMatchObject({ outcome: "other", certainty: "clear" });
    expect(wrong.verdict.ranks[0]?.label).toBe("A-03");
    const flagged = async () =>
      (await getTray(iris, trayId)).stones
        .filter(({ mismatches }) => mismatches > 0)
        .map(({ label }) => label);
    expect(await flagged()).toEqual(["A-05"]);
    expect((await getOverview(iris)).mismatches).toEqual([{ trayId, trayName: "Demo", count: 1 }]);
    await settleStoneCheck(otto, { checkId: wrong.checkId });
    expect(await flagged()).toEqual([]);
    await expect(settleStoneCheck(iris, { checkId: wrong.checkId })).rejects.toMatchObject({
      code: "conflict",
      message: "Otto Instructor has settled this check already.",
    });
  });

  it("ask without a label, and are refused a stone of another tray or a mark off the stone", async () => {
    const { iris, stoneIds } = school;
    const evidence = { ...see("A-04"), cut };
    const free = await checkStone(iris, { trayId, stoneId: null, evidence });
    expect(free.verdict).toMatchObject({ outcome: null });
    expect(free.verdict.ranks[0]?.label).toBe("A-04");
    await expect(checkStone(iris, { trayId, stoneId: stoneIds[0], evidence })).rejects.toMatchObject({
      code: "not-found",
    });
    await expect(
      checkStone(iris, { trayId, stoneId: null, evidence: { ...evidence, marks: [makeMark("m1", 0.9)] } }),
    ).rejects.toMatchObject({ code: "bad-input" });
  });
});

describe("a student", () => {
  it("is answered alike whatever is in hand, and the verdict goes to staff alone", async () => {
    const { ada, iris } = school;
    const exerciseStoneId = exerciseStones.get("A-05") ?? "";
    const answers = [];
    for (const label of ["A-05", "A-03"]) {
      answers.push(await sendStoneCheck(ada, { exerciseStoneId, evidence: see(label) }));
    }
    for (const answer of answers) expect(Object.keys(answer)).toEqual(["checkId"]);
    // Nothing is worked out while the answer is made: its time says nothing either.
    expect(await getDatabase().stoneCheck.count({ where: { byId: ada.userId, judgedAt: null } })).toBe(2);
    expect(await judgeStoneChecks()).toBe(2);
    const told = (await listStoneChecks(iris, trayId)).filter(({ byName }) => byName === "Ada Student");
    expect(told.map(({ outcome }) => outcome).sort()).toEqual(["fits", "other"]);
    await expect(listStoneChecks(ada, trayId)).rejects.toMatchObject({ code: "not-found" });
  });

  it("cannot try a reference out: ten an hour, and the refusals say nothing of it", async () => {
    const { ben } = school;
    const exerciseStoneId = exerciseStones.get("A-04") ?? "";
    for (let i = 0; i < 10; i += 1) await sendStoneCheck(ben, { exerciseStoneId, evidence: see("A-04") });
    await expect(sendStoneCheck(ben, { exerciseStoneId, evidence: see("A-04") })).rejects.toMatchObject({
      code: "too-many-attempts",
      faults: [],
    });
  });
});
