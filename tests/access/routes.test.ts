/** Walks every route for every role, for nobody, for a stale session, and for a request that another site made. */
import { readdirSync } from "node:fs";
import { join, relative } from "node:path";
import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from "vitest";
import * as events from "@/app/api/sittings/[sittingId]/events/route";
import { getDatabase } from "@/lib/data/store/database";
import { CALLERS } from "@/tests/access/access-case";
import { countChanges } from "@/tests/access/count-changes";
import { makePost, OTHER_ROUTES, ROUTE_CASES } from "@/tests/access/route-cases";
import { beSignedIn, setSessionToken } from "@/tests/support/cookie-jar";
import { createTestDatabase, keepSnapshot, type TestDatabase } from "@/tests/support/database";
import { buildSchool, type School, WRITER } from "@/tests/support/school";
import { addDesk } from "@/tests/support/school-desk";
import { makeMark, SECRETS } from "@/tests/support/school-marks";

vi.mock("next/headers", async () => ({ cookies: (await import("@/tests/support/cookie-jar")).cookies }));
vi.mock("next/server", async (original) => ({
  ...(await original<typeof import("next/server")>()),
  after: () => undefined,
}));

const API = join(import.meta.dirname, "../../app/api");

let template: TestDatabase;
let snapshot: string;
let school: School;
let current: TestDatabase | null = null;
beforeAll(async () => {
  template = await createTestDatabase();
  school = await addDesk(await buildSchool());
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

/** `METHOD folder` of every handler under app/api. */
async function listRoutes(): Promise<string[]> {
  const files = readdirSync(API, { recursive: true, withFileTypes: true }).filter(({ name }) =>
    /^route\.tsx?$/.test(name),
  );
  const found: string[] = [];
  for (const { parentPath, name: file } of files) {
    const module: Record<string, unknown> = await import(join(parentPath, file));
    for (const name of Object.keys(module)) found.push(`${name} ${relative(API, parentPath)}`);
  }
  return found.sort();
}

it("the table names every route", async () => {
  expect(await listRoutes()).toEqual([...Object.keys(ROUTE_CASES), ...Object.keys(OTHER_ROUTES)].sort());
});

describe.each(Object.entries(ROUTE_CASES))("%s", (_name, { statuses, call }) => {
  it.each(CALLERS)("%s", async (caller) => {
    await beSignedIn(school[caller]);
    const before = await countChanges();
    const response = await call(school);
    expect(response.status).toBe(statuses[caller]);
    if (response.status === 200) return leaveDatabase();
    expect(await countChanges(), "a refusal writes nothing").toBe(before);
    const body = await response.text();
    expect(Object.keys(JSON.parse(body)).sort()).toEqual(["code", "faults", "message"]);
    for (const secret of Object.values(SECRETS).flat()) expect(body).not.toContain(secret);
  });

  it("nobody", async () => {
    await beSignedIn(null);
    expect((await call(school)).status).toBe(401);
  });

  it("a session that was ended, and tokens that are none", async () => {
    await beSignedIn(school.ada, 0);
    expect((await call(school)).status).toBe(401);
    await beSignedIn(school.ada);
    await getDatabase().user.updateMany({ data: { active: false } });
    expect((await call(school)).status).toBe(401);
    for (const token of ["", "no token", "a.b.c.d.e"]) {
      setSessionToken(token);
      expect((await call(school)).status).toBe(401);
    }
    await leaveDatabase();
  });
});

describe("a request that changes something", () => {
  const body = {
    writerId: WRITER,
    events: [{ seq: 3, atMs: 1, kind: "marks", put: [makeMark("m2", 0.1)], removed: [] }],
  };
  const post = (request: Request) =>
    events.POST(request, { params: Promise.resolve({ sittingId: school.adaOnBench }) });

  it.each([
    ["from another site", makePost(body, { origin: "https://elsewhere.test" }), 403],
    ["from another port", makePost(body, { origin: "http://loupework.test:81" }), 403],
    ["from a page without an origin", makePost(body, { origin: "null" }), 403],
    ["as a form would send it", makePost(body, { "content-type": "text/plain" }), 422],
    ["that is no JSON", makePost("{"), 422],
    ["that says too little", makePost({}), 422],
    ["with a key too many", makePost({ ...body, total: 100 }), 422],
    ["that is too large", makePost(body, { "content-length": "9000000" }), 422],
  ])("%s is refused and writes nothing", async (_what, request, status) => {
    await beSignedIn(school.ada);
    const before = await countChanges();
    expect((await post(request)).status).toBe(status);
    expect(await countChanges()).toBe(before);
  });
});
