import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Viewer } from "@/lib/access/viewer";
import { exportExerciseSet } from "@/lib/data/export-exercise-set";
import { exportPlots } from "@/lib/data/export-plots";
import { getDebrief } from "@/lib/data/get-debrief";
import { getReviewGrid } from "@/lib/data/get-review-grid";
import { listExercises } from "@/lib/data/list-exercises";
import { listMyExercises } from "@/lib/data/list-my-exercises";
import { listSections } from "@/lib/data/list-sections";
import { listTrail } from "@/lib/data/list-trail";
import { listTrays } from "@/lib/data/list-trays";
import { getDatabase } from "@/lib/data/store/database";
import { DEMO_ACCOUNTS, DEMO_PASSWORD, PAST_ACCOUNTS } from "@/lib/demo/demo-accounts";
import { readExerciseSet } from "@/lib/exchange/read-exercise-set";
import { readPlots } from "@/lib/exchange/read-plots";
import { writeExerciseSet } from "@/lib/exchange/write-exercise-set";
import { writePlots } from "@/lib/exchange/write-plots";
import { PlotSchema } from "@/lib/plot/plots-file";
import { type ScoreResult, ScoreResultSchema } from "@/lib/plot/score-result";
import { rebuildSitting, SittingEventSchema } from "@/lib/plot/sitting-event";
import { scorePlots } from "@/lib/scoring/score-plot";
import { checkPassword } from "@/lib/workflows/check-password";
import { loadDemo } from "@/lib/workflows/load-demo";
import { scorePending } from "@/lib/workflows/score-pending";
import { createTestDatabase, type TestDatabase } from "@/tests/support/database";

let database: TestDatabase;
let viewers: Map<string, Viewer>;

const as = (login: string): Viewer => {
  const viewer = viewers.get(login);
  if (viewer === undefined) throw new Error(`nobody is called ${login}`);
  return viewer;
};

beforeAll(async () => {
  database = await createTestDatabase();
  expect(await loadDemo()).toBe(true);
  const users = await getDatabase().user.findMany();
  viewers = new Map(users.map(({ id, login, name, role }) => [login, { userId: id, name, role }]));
});
afterAll(() => database.remove());

describe("the demo", () => {
  it("is not loaded twice, nor over anybody's work", async () => {
    expect(await loadDemo()).toBe(false);
    expect(await getDatabase().user.count()).toBe(DEMO_ACCOUNTS.length + PAST_ACCOUNTS.length);
  });

  it("has one director, two instructors and twelve students, who sign in with the demo's password", async () => {
    const users = await getDatabase().user.findMany({ where: { active: true } });
    const count = (role: string) => users.filter((user) => user.role === role).length;
    expect([count("director"), count("instructor"), count("student")]).toEqual([1, 2, 12]);
    expect(await checkPassword(DEMO_PASSWORD, users[0]?.passwordHash ?? null)).toBe(true);
    expect(await checkPassword(`${DEMO_PASSWORD}!`, users[0]?.passwordHash ?? null)).toBe(false);
  });

  it("has two sections of this term and one of the last, and four trays with references", async () => {
    const sections = await listSections(as("director"));
    expect(sections.map(({ students }) => students).sort((a, b) => b - a)).toEqual([12, 12, 4]);
    const trays = await listTrays(as("instructor"));
    expect(trays.map(({ stoneCount, withReference }) => [stoneCount, withReference]).sort()).toEqual([
      [3, 3],
      [4, 4],
      [4, 4],
      [5, 5],
    ]);
  });

  it("has one exercise closed and released, one half done, one just set", async () => {
    const exercises = await listExercises(as("instructor"));
    const rows = exercises.map(({ title, phase, stones, students, handedIn, released }) => ({
      title,
      phase,
      all: stones * students,
      handedIn,
      released,
    }));
    expect(rows.find(({ title }) => title === "First look")).toMatchObject({
      phase: "closed",
      all: 60,
      handedIn: 60,
      released: 60,
    });
    expect(rows.find(({ title }) => title === "Grade boundaries")).toMatchObject({
      phase: "open",
      handedIn: 0,
      released: 0,
    });
    const half = rows.find(({ title }) => title === "Reflections and glints");
    expect(half).toMatchObject({ phase: "open", released: 0 });
    expect(half?.handedIn).toBeGreaterThan(10);
    expect(half?.handedIn).toBeLessThan(40);
    const exercise = exercises.find(({ title }) => title === "Reflections and glints");
    const grid = await getReviewGrid(as("instructor"), exercise?.exerciseId ?? "");
    expect(new Set(grid.cells.map(({ state }) => state))).toEqual(
      new Set(["not-begun", "on-the-bench", "scored"]),
    );
  });

  it("has one by every rule: in order, unlabelled, timed, proved, twice, a stone of its own day, its debriefs set", async () => {
    const exercise = (await listExercises(as("instructor"))).find(({ title }) => title === "Unseen stones");
    const grid = await getReviewGrid(as("instructor"), exercise?.exerciseId ?? "");
    expect(grid.rules).toMatchObject({
      preparation: "required",
      proofs: "inside",
      areProofsRequired: true,
      minutesPerStone: 25,
      attempts: 2,
      isInOrder: true,
      areLabelsHidden: true,
    });
    expect(grid.debriefsAt).not.toBeNull();
    const mine = await listMyExercises(as("student11"));
    const unseen = mine.find(({ title }) => title === "Unseen stones");
    expect(unseen).toMatchObject({ phase: "open", minutesPerStone: 35 });
    expect(unseen?.stones.map(({ label }) => label)).toEqual(["Stone 1", "Stone 2", "Stone 3"]);
    expect(unseen?.stones.map(({ opensAfter }) => opensAfter)).toEqual([null, "Stone 1", "Stone 2"]);
    expect(unseen?.stones.map(({ opensAt }) => opensAt === null)).toEqual([true, true, false]);
    expect(Date.parse(unseen?.dueAt ?? "")).toBeGreaterThan(Date.parse(exercise?.dueAt ?? ""));
  });

  it("has a retake that waits for its student", async () => {
    const mine = await listMyExercises(as("student6"));
    const stones = mine.find(({ title }) => title === "Reflections and glints")?.stones ?? [];
    expect(stones.map(({ attemptsLeft }) => attemptsLeft)).toEqual([0, 0, 0, 1]);
  });

  it("has a retake that was sat, the later attempt counting", async () => {
    const exercise = (await listExercises(as("instructor"))).find(
      ({ title }) => title === "Reflections and glints",
    );
    const grid = await getReviewGrid(as("instructor"), exercise?.exerciseId ?? "");
    const again = grid.cells.filter(({ attempt }) => attempt === 2);
    expect(again).toHaveLength(1);
    expect(again[0]).toMatchObject({ state: "scored" });
  });

  it("has logs that rebuild to what was handed in, and states that the logs add up to", async () => {
    const sittings = await getDatabase().sitting.findMany({ include: { events: true, handIn: true } });
    expect(sittings.length).toBeGreaterThan(70);
    for (const sitting of sittings) {
      const state = rebuildSitting(sitting.events.map(({ body }) => SittingEventSchema.parse(body)));
      expect(state).toEqual(sitting.state);
      expect(state.lastSeq).toBe(sitting.lastSeq);
      expect(state.plot.marks.length).toBe(sitting.markCount);
      if (sitting.handIn === null) continue;
      expect(PlotSchema.parse(sitting.handIn.plot)).toEqual(state.plot);
      expect(sitting.handIn.lastSeq).toBe(sitting.lastSeq);
      expect(sitting.handIn.handedInAt.getTime()).toBeGreaterThan(sitting.openedAt.getTime());
    }
  });

  it("was handed in while the exercises were open, and nothing lies in the future", async () => {
    const sittings = await getDatabase().sitting.findMany({
      include: { handIn: true, releases: true, exerciseStone: { include: { exercise: true } } },
    });
    const now = Date.now();
    for (const { openedAt, lastEventAt, handIn, releases, exerciseStone } of sittings) {
      const { opensAt, dueAt } = exerciseStone.exercise;
      expect(openedAt.getTime()).toBeGreaterThanOrEqual(opensAt.getTime());
      const last = handIn?.handedInAt ?? lastEventAt ?? openedAt;
      expect(last.getTime()).toBeLessThanOrEqual(Math.min(now, dueAt.getTime()));
      for (const { releasedAt } of releases) expect(releasedAt.getTime()).toBeLessThan(now);
    }
  });

  it("is scored by the engine: nothing is left to score, and the exported files score to the same totals", async () => {
    expect(await scorePending()).toEqual({ scored: 0, failed: 0 });
    for (const { exerciseId, title } of await listExercises(as("director"))) {
      const set = writeExerciseSet(await exportExerciseSet(as("director"), exerciseId));
      const plots = writePlots(await exportPlots(as("director"), exerciseId));
      const resolved = readExerciseSet(set);
      const again = scorePlots(resolved, readPlots(plots, resolved)).map(({ result }) => result);
      const kept = await getDatabase().result.findMany({
        where: { handIn: { sitting: { exerciseStone: { exerciseId } } } },
      });
      expect([title, again.length]).toEqual([title, kept.length]);
      // A student has a result for each attempt at a stone.
      const stored = kept.map(({ result }) => ScoreResultSchema.parse(result));
      const toKey = ({ by, stone, total }: ScoreResult) => `${by} ${stone} ${total}`;
      const sort = (results: readonly ScoreResult[]) =>
        [...results].sort((a, b) => (toKey(a) < toKey(b) ? -1 : 1));
      expect(sort(again)).toEqual(sort(stored));
    }
  });

  it("shows strays of every cause, turned plots, and two stones that were swapped", async () => {
    const results = await getDatabase().result.findMany();
    const causes = new Set(
      results.flatMap(({ result }) =>
        (result as unknown as { strays: { cause: string }[] }).strays.map(({ cause }) => cause),
      ),
    );
    expect(causes).toEqual(
      new Set(["dust", "echo", "glint", "double", "fragment", "other-view", "unexplained"]),
    );
    const turns = results.map(
      ({ result }) => (result as unknown as { alignment: { turnDeg: number } }).alignment.turnDeg,
    );
    expect(turns.some((turn) => turn !== 0)).toBe(true);
    const suspects = results.flatMap(({ result }) => {
      const { by, stone, suspectStone } = result as unknown as Record<string, string | null>;
      return suspectStone === null ? [] : [`${by}: ${stone} may be ${suspectStone}`];
    });
    expect(suspects).toContain("student4: A-03 may be A-04");
    const totals = results.map(({ totalHundredths }) => totalHundredths / 100);
    expect(Math.min(...totals)).toBeLessThan(60);
    expect(Math.max(...totals)).toBeGreaterThan(90);
  });

  it("lets a student read the debriefs that are released, and shows a trail in order of time", async () => {
    const mine = await listMyExercises(as("student1"));
    const ready = mine.flatMap(({ stones }) => stones.filter(({ state }) => state === "debrief-ready"));
    expect(ready.length).toBe(5);
    const debrief = await getDebrief(as("student1"), ready[3]?.sittingId ?? "");
    expect(debrief.result.lines.length).toBeGreaterThan(0);
    const { rows, total } = await listTrail(as("director"), { page: 1 });
    expect(total).toBeGreaterThan(150);
    const times = rows.map(({ at }) => Date.parse(at));
    expect(times).toEqual([...times].sort((a, b) => b - a));
  });
});
