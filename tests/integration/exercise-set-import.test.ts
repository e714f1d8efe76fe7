/** Bringing exercise sets in: the dry run, all or nothing, and the same bytes after a way through an empty database. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Viewer } from "@/lib/access/viewer";
import { exportExerciseSet } from "@/lib/data/export-exercise-set";
import { exportTraySet } from "@/lib/data/export-tray-set";
import { getDatabase } from "@/lib/data/store/database";
import { parseJson } from "@/lib/exchange/parse-json";
import { writeExerciseSet } from "@/lib/exchange/write-exercise-set";
import type { SetImportPlan } from "@/lib/plot/set-import";
import { duplicateExercise } from "@/lib/workflows/duplicate-exercise";
import { importExerciseSet } from "@/lib/workflows/import-exercise-set";
import { listLibrarySets } from "@/lib/workflows/list-library-sets";
import { planExerciseSetImport } from "@/lib/workflows/plan-exercise-set-import";
import { countChanges } from "@/tests/access/count-changes";
import { createTestDatabase, type TestDatabase } from "@/tests/support/database";
import { listExerciseSets } from "@/tests/support/list-exercise-sets";
import { makeSampleSet, type SampleSet } from "@/tests/support/sample-set";
import { buildSchool, makePerson } from "@/tests/support/school";

let database: TestDatabase;
beforeEach(async () => {
  database = await createTestDatabase();
});
afterEach(() => database.remove());

const makeDirector = () => makePerson("dora", "Dora", "director");
const states = ({ stones }: SetImportPlan) => stones.map(({ label, state }) => [label, state]);

/** Two stones; the second named `S-2`. */
function makePair(): SampleSet {
  const set = makeSampleSet();
  const [stone] = makeSampleSet().stones;
  set.stones.push({ ...stone, id: "S-2" });
  return set;
}

async function bringIn(viewer: Viewer, json: unknown, trayId: string | null = null) {
  return importExerciseSet(viewer, { json, trayId, trayName: "Made" });
}

describe("the way out and in again", () => {
  it.each(listExerciseSets().map(({ name, text }) => [name, text] as const))(
    "%s comes out of a database as it went in",
    async (_name, text) => {
      const director = await makeDirector();
      const json = parseJson(text) as { title: string };
      const { trayId } = await importExerciseSet(director, { json, trayName: json.title });
      expect(writeExerciseSet(await exportTraySet(director, trayId))).toBe(text);
    },
  );

  it("a tray and an exercise that were made on screen come out of an empty database as they went in", async () => {
    const school = await buildSchool();
    const tray = writeExerciseSet(await exportTraySet(school.director, school.trayId));
    const exercise = writeExerciseSet(await exportExerciseSet(school.director, school.exerciseId));
    await database.remove();
    database = await createTestDatabase();
    const director = await makeDirector();
    for (const text of [tray, exercise]) {
      const json = parseJson(text) as { title: string };
      const { trayId } = await importExerciseSet(director, { json, trayName: json.title });
      expect(writeExerciseSet(await exportTraySet(director, trayId))).toBe(text);
    }
  });
});

describe("the library", () => {
  it("is three sets of our own", async () => {
    const titles = listLibrarySets(await makeDirector()).map(({ title }) => title);
    expect(titles).toEqual(["First look", "Reflections and glints", "Grade boundaries"]);
  });
});

describe("a dry run", () => {
  it("writes nothing and says what would be made, changed and left", async () => {
    const director = await makeDirector();
    const { trayId } = await bringIn(director, makePair());
    const set = makePair();
    const [first, second] = set.stones;
    set.stones = [
      { ...first, weightCt: 0.6, grades: { clarity: "SI2", colour: "H" } },
      { ...second },
      { ...first, id: "S-3" },
    ];
    const before = await countChanges();
    const plan = await planExerciseSetImport(director, { json: set, trayId, trayName: "-" });
    expect(await countChanges()).toBe(before);
    expect(states(plan)).toEqual([
      ["S-1", "changed"],
      ["S-2", "unchanged"],
      ["S-3", "made"],
    ]);
    expect(plan.stones[0]?.changes).toEqual(["stone: weight", "reference version 2: grades"]);
    expect(plan.kept).toEqual([]);
    const done = await importExerciseSet(director, {
      json: set,
      trayId,
      trayName: "-",
      fingerprint: plan.fingerprint,
    });
    expect(done).toEqual({ trayId, made: 1, changed: 1, unchanged: 1 });
    const stones = await getDatabase().stone.findMany({
      orderBy: { position: "asc" },
      include: { references: true },
    });
    expect(stones.map(({ label, revision, references }) => [label, revision, references.length])).toEqual([
      ["S-1", 2, 2],
      ["S-2", 1, 1],
      ["S-3", 1, 1],
    ]);
    const again = await planExerciseSetImport(director, { json: set, trayId, trayName: "-" });
    expect(again.stones.every(({ state }) => state === "unchanged")).toBe(true);
  });

  it("names every stone, those at fault with the path to each fault, however deep it lies", async () => {
    const director = await makeDirector();
    const set = makePair();
    const [first] = set.stones;
    const off = [
      { id: "a", view: "crown", characteristic: "crystal", shape: { kind: "dot", at: [0.7, 0.7] } },
    ];
    set.stones.push({ ...first, id: "S-3", marks: off }, { ...first, id: "S-4", cut: "no-such-cut" });
    const plan = await planExerciseSetImport(director, { json: set, trayName: "New" });
    expect(states(plan).map(([, state]) => state)).toEqual(["made", "made", "refused", "refused"]);
    expect(plan.faults.map(({ path }) => path).sort()).toEqual([
      "stones[2].marks[0].shape.at",
      "stones[3].cut",
    ]);
    const before = await countChanges();
    await expect(bringIn(director, set)).rejects.toMatchObject({ code: "bad-input" });
    expect(await countChanges()).toBe(before);
  });

  it("does not hold once the tray, its name or the file is another: then nothing is written", async () => {
    const director = await makeDirector();
    const { trayId } = await bringIn(director, makePair());
    const set = makePair();
    set.stones = set.stones.slice(0, 1).map((stone) => ({ ...stone, weightCt: 0.7 }));
    const input = { json: set, trayId, trayName: "-" };
    const { fingerprint } = await planExerciseSetImport(director, input);
    await bringIn(director, { ...makePair(), stones: [{ ...makePair().stones[1], weightCt: 0.9 }] }, trayId);
    const before = await countChanges();
    await expect(importExerciseSet(director, { ...input, fingerprint })).rejects.toMatchObject({
      code: "conflict",
    });
    expect(await countChanges()).toBe(before);
    const fresh = await planExerciseSetImport(director, input);
    const other = { ...input, json: makePair(), fingerprint: fresh.fingerprint };
    await expect(importExerciseSet(director, other)).rejects.toMatchObject({ code: "conflict" });
    await importExerciseSet(director, { ...input, fingerprint: fresh.fingerprint });
  });

  it("refuses scales that the tray's other stones are not held against", async () => {
    const director = await makeDirector();
    const { trayId } = await bringIn(director, makePair());
    const set = { ...makeSampleSet(), scales: { colour: ["H", "I"] } };
    const plan = await planExerciseSetImport(director, { json: set, trayId, trayName: "-" });
    expect(plan.faults.map(({ path }) => path)).toEqual(["scales"]);
  });
});

describe("a duplicate of an exercise", () => {
  it("keeps stones, rules and rubric, moves every date by as much, and starts without sittings", async () => {
    const { director, exerciseId, otherSectionId } = await buildSchool();
    const first = await getDatabase().exercise.findUniqueOrThrow({ where: { id: exerciseId } });
    const opensAt = new Date(first.opensAt.getTime() + 200 * 86_400_000).toISOString();
    const copy = await duplicateExercise(director, {
      exerciseId,
      sectionId: otherSectionId,
      title: "Spring",
      opensAt,
    });
    const rows = {
      stones: { include: { sittings: true } },
      rubrics: { orderBy: { version: "desc" } },
    } as const;
    const [a, b] = await Promise.all(
      [exerciseId, copy.exerciseId].map((id) =>
        getDatabase().exercise.findUniqueOrThrow({ where: { id }, include: rows }),
      ),
    );
    expect(b?.sectionId).toBe(otherSectionId);
    expect([b?.title, b?.rules, b?.terms, b?.notes]).toEqual(["Spring", a?.rules, a?.terms, a?.notes]);
    expect(b?.opensAt.toISOString()).toBe(opensAt);
    const span = (one: typeof a) => Number(one?.dueAt) - Number(one?.opensAt);
    expect(span(b)).toBe(span(a));
    expect(Number(b?.closesAt) - Number(b?.dueAt)).toBe(Number(a?.closesAt) - Number(a?.dueAt));
    expect(b?.stones.map(({ stoneId }) => stoneId)).toEqual(a?.stones.map(({ stoneId }) => stoneId));
    expect(b?.rubrics.map(({ body }) => body)).toEqual([a?.rubrics[0]?.body]);
    expect(b?.stones.flatMap(({ sittings }) => sittings)).toEqual([]);
  });
});
