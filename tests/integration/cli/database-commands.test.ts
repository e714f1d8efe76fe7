import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { runCommandLine } from "@/lib/cli/run-command-line";
import { getDatabase } from "@/lib/data/store/database";
import { readExerciseSet } from "@/lib/exchange/read-exercise-set";
import { readPlots } from "@/lib/exchange/read-plots";
import { writeExerciseSet } from "@/lib/exchange/write-exercise-set";
import { loadDemo } from "@/lib/workflows/load-demo";
import { createTestDatabase, type TestDatabase } from "@/tests/support/database";
import { listExerciseSets } from "@/tests/support/list-exercise-sets";
import { makeSampleSet } from "@/tests/support/sample-set";

const folder = mkdtempSync(join(tmpdir(), "loupework-cli-"));
let database: TestDatabase;

beforeAll(async () => {
  database = await createTestDatabase();
  await loadDemo();
});
afterAll(async () => {
  await database.remove();
  rmSync(folder, { recursive: true });
});

const findExercise = (title: string) => getDatabase().exercise.findFirstOrThrow({ where: { title } });

describe("export", () => {
  it("prints the exercise as the set that it was made from, but for title, notes and the whole rubric", async () => {
    const { id } = await findExercise("First look");
    const { status, stdout, stderr } = await runCommandLine(["export", "--exercise", id, "--what", "set"]);
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    const { set, rubric } = readExerciseSet(stdout);
    const made = listExerciseSets().find(({ name }) => name === "first-look.json");
    expect(set.stones).toEqual(made?.resolved.set.stones);
    expect(rubric).toEqual(made?.resolved.rubric);
    expect(stdout).toBe(writeExerciseSet(set));
  });

  it("prints the plots that were handed in, which fit the exported set", async () => {
    const { id } = await findExercise("Reflections and glints");
    const exported = await runCommandLine(["export", "--exercise", id, "--what", "set"]);
    const printed = await runCommandLine([
      "export",
      "--exercise",
      id,
      "--what",
      "plots",
      "--as",
      "instructor",
    ]);
    expect(printed.status).toBe(0);
    const { plots } = readPlots(printed.stdout, readExerciseSet(exported.stdout));
    const handedIn = await getDatabase().handIn.count({
      where: { sitting: { exerciseStone: { exerciseId: id } } },
    });
    expect(plots.length).toBe(handedIn);
  });

  it.each([
    [
      "an exercise that is not there",
      ["--exercise", "x", "--what", "set"],
      /--exercise: "x" is none of these[\s\S]*First look/,
    ],
    ["another form", ["--exercise", "x", "--what", "pdf"], /--what: must be set or plots/],
    [
      "nobody's account",
      ["--exercise", "x", "--what", "set", "--as", "nobody"],
      /--as: "nobody" is no active account/,
    ],
    ["a student's account", ["--exercise", "x", "--what", "set", "--as", "student1"], /not for you to see/],
  ])("refuses %s", async (_, args, words) => {
    const { status, stdout, stderr } = await runCommandLine(["export", ...args]);
    expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
    expect(stderr).toMatch(words);
  });
});

describe("import", () => {
  const put = (name: string, value: unknown) => {
    const path = join(folder, name);
    writeFileSync(path, JSON.stringify(value));
    return path;
  };

  it("makes a tray of a set, as the account that is named", async () => {
    const path = put("sample.json", makeSampleSet());
    const run = await runCommandLine(["import", "--set", path, "--tray", "Borrowed", "--as", "instructor2"]);
    expect(run).toMatchObject({ status: 0, stderr: "" });
    const { trayId, ...rest } = JSON.parse(run.stdout) as { trayId: string };
    expect(rest).toEqual({ made: 1, changed: 0, unchanged: 0, name: "Borrowed", stones: ["S-1"] });
    const tray = await getDatabase().tray.findUniqueOrThrow({
      where: { id: trayId },
      include: { owner: true, stones: { include: { references: true } } },
    });
    expect(tray.owner.login).toBe("instructor2");
    expect(tray.stones.map(({ label, references }) => [label, references.length])).toEqual([["S-1", 1]]);
  });

  it("writes nothing when it refuses", async () => {
    const before = await getDatabase().tray.count();
    const broken = makeSampleSet();
    broken.stones.push({ ...broken.stones[0] });
    const run = await runCommandLine(["import", "--set", put("broken.json", broken)]);
    expect(run).toMatchObject({ status: 2, stdout: "" });
    expect(run.stderr).toMatch(/broken\.json: [\s\S]*stones\[1\]\.id: /);
    const student = await runCommandLine([
      "import",
      "--set",
      put("s.json", makeSampleSet()),
      "--as",
      "student1",
    ]);
    expect(student).toMatchObject({ status: 2, stdout: "" });
    expect(await getDatabase().tray.count()).toBe(before);
  });

  it("says what to do where there is no database, and makes none", async () => {
    const url = process.env.DATABASE_URL;
    process.env.DATABASE_URL = `file:${join(folder, "none.db")}`;
    const run = await runCommandLine(["import", "--set", put("t.json", makeSampleSet())]);
    process.env.DATABASE_URL = url;
    expect(run).toMatchObject({ status: 2, stdout: "" });
    expect(run.stderr).toMatch(/DATABASE_URL: there is no file .*none\.db; `npm run up` makes one/);
  });
});
