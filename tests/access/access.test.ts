/**
 * Walks every exported function of lib/data and lib/workflows for every role and for the wrong owner. A function that
 * is new and stands in no table fails here.
 */
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { AppError } from "@/lib/base/app-error";
import { getDatabase } from "@/lib/data/store/database";
import { createFirstDirector } from "@/lib/workflows/create-first-director";
import { type AccessCase, CALLERS, type Outcome } from "@/tests/access/access-case";
import { countChanges } from "@/tests/access/count-changes";
import { DATA_CASES, DATA_WITHOUT_VIEWER } from "@/tests/access/data-cases";
import { WORKFLOW_CASES, WORKFLOWS_WITHOUT_VIEWER } from "@/tests/access/workflow-cases";
import { createTestDatabase, keepSnapshot, type TestDatabase } from "@/tests/support/database";
import { buildSchool, PASSWORD, type School } from "@/tests/support/school";
import { addDesk, addRescore, addSums } from "@/tests/support/school-desk";

const LIB = join(import.meta.dirname, "../../lib");

/** `file function` of every function that the files of a folder export; folders in it are not entered. */
async function listExports(folder: string): Promise<string[]> {
  const found: string[] = [];
  for (const entry of readdirSync(join(LIB, folder), { withFileTypes: true })) {
    if (!entry.isFile() || !entry.name.endsWith(".ts")) continue;
    const module: Record<string, unknown> = await import(join(LIB, folder, entry.name));
    for (const [name, value] of Object.entries(module)) {
      if (typeof value === "function") found.push(`${entry.name.replace(/\.ts$/, "")} ${name}`);
    }
  }
  return found.sort();
}

let template: TestDatabase;
let snapshot: string;
let school: School;
let current: TestDatabase | null = null;
beforeAll(async () => {
  template = await createTestDatabase();
  school = await addSums(await addDesk(await addRescore(await buildSchool())));
  snapshot = await keepSnapshot(template);
});
beforeEach(async () => {
  current ??= await createTestDatabase(snapshot);
});
afterAll(async () => {
  await leaveDatabase();
  await template.remove();
});

/** The next test begins with a fresh copy: this one may have written. */
async function leaveDatabase(): Promise<void> {
  await current?.remove();
  current = null;
}

/** The same school with ids of nothing. */
function makeGhosts(): School {
  const ghost = () => crypto.randomUUID();
  const people = Object.fromEntries(CALLERS.map((name) => [name, { ...school[name], userId: ghost() }]));
  const ids = Object.entries(school)
    .filter(([, value]) => typeof value === "string")
    .map(([key]) => [key, ghost()]);
  return {
    ...school,
    ...people,
    ...Object.fromEntries(ids),
    stoneIds: [ghost(), ghost()],
    exerciseStoneIds: [ghost(), ghost()],
  };
}

async function attempt(call: () => Promise<unknown>): Promise<{ outcome: Outcome; message: string }> {
  try {
    await call();
    return { outcome: "ok", message: "" };
  } catch (thrown) {
    if (!(thrown instanceof AppError)) throw thrown;
    return { outcome: thrown.code, message: JSON.stringify([thrown.message, thrown.faults]) };
  }
}

describe("the tables of this test", () => {
  it("name every exported function of lib/data", async () => {
    expect(await listExports("data")).toEqual(
      [...Object.keys(DATA_CASES), ...Object.keys(DATA_WITHOUT_VIEWER)].sort(),
    );
  });

  it("name every exported function of lib/workflows", async () => {
    expect(await listExports("workflows")).toEqual(
      [...Object.keys(WORKFLOW_CASES), ...Object.keys(WORKFLOWS_WITHOUT_VIEWER)].sort(),
    );
  });
});

const CASES: [string, AccessCase][] = [...Object.entries(DATA_CASES), ...Object.entries(WORKFLOW_CASES)];

describe.each(CASES)("%s", (_name, { outcomes, byId, call }) => {
  it.each(CALLERS)("%s", async (caller) => {
    const before = await countChanges();
    const { outcome, message } = await attempt(() => call(school[caller], school));
    expect(outcome).toBe(outcomes[caller]);
    if (outcome === "ok") return leaveDatabase();
    expect(await countChanges(), "a refusal writes nothing").toBe(before);
    // A blind reader may know that the stone is there.
    if (!byId || outcome === "reading-blind") return;
    const ghost = await attempt(() => call(school[caller], makeGhosts()));
    expect(ghost, "what is not there and what is not one's own read the same").toEqual({ outcome, message });
  });
});

describe("the first director", () => {
  it("can be made only while there is no account", async () => {
    const input = { login: "mallory", name: "Mallory", password: PASSWORD };
    const before = await countChanges();
    await expect(createFirstDirector(input)).rejects.toMatchObject({ code: "not-found" });
    expect(await countChanges()).toBe(before);
    await leaveDatabase();
    const empty = await createTestDatabase();
    await createFirstDirector(input);
    await expect(createFirstDirector({ ...input, login: "second" })).rejects.toMatchObject({
      code: "not-found",
    });
    expect(await getDatabase().user.findMany({ select: { login: true, role: true } })).toEqual([
      { login: "mallory", role: "director" },
    ]);
    await empty.remove();
  });
});
