/** Walks every server action for every role, for the wrong owner, and for nobody. */
import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from "vitest";
import { CALLERS } from "@/tests/access/access-case";
import { ACTION_CASES } from "@/tests/access/action-cases";
import { countChanges } from "@/tests/access/count-changes";
import { beSignedIn } from "@/tests/support/cookie-jar";
import { createTestDatabase, keepSnapshot, type TestDatabase } from "@/tests/support/database";
import { buildSchool, type School } from "@/tests/support/school";
import { addDesk, addRescore, addSums } from "@/tests/support/school-desk";
import { SECRETS } from "@/tests/support/school-marks";

vi.mock("next/headers", async () => ({
  cookies: (await import("@/tests/support/cookie-jar")).cookies,
  headers: async () => new Headers(),
}));
vi.mock("next/server", async (original) => ({
  ...(await original<typeof import("next/server")>()),
  after: () => undefined,
}));
vi.mock("next/cache", () => ({ revalidatePath: () => undefined }));

const APP = join(import.meta.dirname, "../../app");

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
  await current?.remove();
  await template.remove();
});

async function leaveDatabase(): Promise<void> {
  await current?.remove();
  current = null;
}

/** Every source file under app and components, with its text. */
function listSources(folder: string): [path: string, text: string][] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter(({ name }) => /\.tsx?$/.test(name))
    .map(({ parentPath, name }) => join(parentPath, name))
    .map((path) => [path, readFileSync(path, "utf8")]);
}

/** `folder action` of everything that a file marked "use server" exports. */
async function listActions(): Promise<string[]> {
  const found: string[] = [];
  for (const [path, text] of listSources(APP)) {
    if (!/^["']use server["']/m.test(text)) continue;
    const module: Record<string, unknown> = await import(path);
    const folder = relative(APP, path).replace(/\/?actions\.ts$/, "");
    for (const name of Object.keys(module)) found.push(`${folder} ${name}`);
  }
  return found.sort();
}

describe("the project", () => {
  it("has no server action that the table does not name", async () => {
    expect(await listActions()).toEqual(Object.keys(ACTION_CASES).sort());
  });

  it("has no page, route or component that goes past the doors to what is behind them", () => {
    const behind = /from "@\/(lib\/(data|workflows)\/[a-z-]+\/|prisma\/)/;
    const sources = [...listSources(APP), ...listSources(join(APP, "../components"))];
    expect(sources.length).toBeGreaterThan(10);
    expect(sources.filter(([, text]) => behind.test(text)).map(([path]) => relative(APP, path))).toEqual([]);
  });
});

describe.each(Object.entries(ACTION_CASES))("%s", (_name, { allowed, call }) => {
  it.each(CALLERS)("%s", async (caller) => {
    await beSignedIn(school[caller]);
    const before = await countChanges();
    const answer = await call(school);
    expect(answer.ok).toBe(allowed.includes(caller));
    if (answer.ok) return leaveDatabase();
    expect(await countChanges(), "a refusal writes nothing").toBe(before);
    const text = JSON.stringify(answer);
    for (const secret of Object.values(SECRETS).flat()) expect(text).not.toContain(secret);
  });

  it("nobody", async () => {
    await beSignedIn(null);
    const before = await countChanges();
    expect((await call(school)).ok).toBe(false);
    expect(await countChanges()).toBe(before);
  });
});
