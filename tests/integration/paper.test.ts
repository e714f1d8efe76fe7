/** Papers: that they are PDFs of the right size and length, and that a worksheet holds nothing of a reference. */
import { inflateSync } from "node:zlib";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import * as worksheetsRoute from "@/app/api/exercises/[exerciseId]/worksheets.pdf/route";
import * as reportRoute from "@/app/api/sections/[sectionId]/report.pdf/route";
import * as debriefRoute from "@/app/api/sittings/[sittingId]/debrief.pdf/route";
import { getWorksheets } from "@/lib/data/get-worksheets";
import { getDatabase } from "@/lib/data/store/database";
import { beSignedIn } from "@/tests/support/cookie-jar";
import { createTestDatabase, type TestDatabase } from "@/tests/support/database";
import { buildSchool, type School } from "@/tests/support/school";
import { SECRETS } from "@/tests/support/school-marks";

vi.mock("next/headers", async () => ({ cookies: (await import("@/tests/support/cookie-jar")).cookies }));

let database: TestDatabase;
let school: School;
beforeAll(async () => {
  database = await createTestDatabase();
  school = await buildSchool();
});
afterAll(() => database.remove());

/** A file's objects as text, its packed streams unpacked: all that a reader of the file could find in it. */
function unpack(bytes: Uint8Array): string {
  const raw = Buffer.from(bytes).toString("latin1");
  const streams = [...raw.matchAll(/stream\r?\n([\s\S]*?)\r?\nendstream/g)].map(([, body = ""]) => {
    try {
      return inflateSync(Buffer.from(body, "latin1")).toString("latin1");
    } catch {
      return body;
    }
  });
  return [raw, ...streams].join("\n");
}
const countPages = (text: string) => text.match(/\/Type \/Page\b(?!s)/g)?.length ?? 0;
const listSizes = (text: string) =>
  [...text.matchAll(/\/MediaBox \[([^\]]+)\]/g)].map(([, box = ""]) =>
    box.split(" ").map((side) => Math.round(Number(side))),
  );
const ask = (paper: string) => new Request(`http://loupework.test/?paper=${paper}`);
const sheets = (paper: string) =>
  worksheetsRoute.GET(ask(paper), { params: Promise.resolve({ exerciseId: school.exerciseId }) });
const debrief = (sittingId: string) =>
  debriefRoute.GET(ask("a4"), { params: Promise.resolve({ sittingId }) });

describe("worksheets", () => {
  it.each([
    ["a4", [0, 0, 595, 842]],
    ["letter", [0, 0, 612, 792]],
    ["nonsense", [0, 0, 595, 842]],
  ])("on %s: a page for each stone, closed as a PDF is", async (paper, box) => {
    await beSignedIn(school.ada);
    const answer = await sheets(paper);
    expect(answer.status).toBe(200);
    expect(answer.headers.get("content-type")).toBe("application/pdf");
    expect(answer.headers.get("cache-control")).toBe("no-store");
    const text = unpack(new Uint8Array(await answer.arrayBuffer()));
    expect(text.startsWith("%PDF-1.")).toBe(true);
    expect(text).toContain("%%EOF");
    expect(countPages(text)).toBe(2);
    expect(listSizes(text)).toEqual([box, box]);
    expect(text).toContain("AtkinsonHyperlegibleNext");
  });

  it("hold nothing of a reference, a decoy or anybody's work: not in the input, the drawing or the metadata", async () => {
    const view = await getWorksheets(school.ada, school.exerciseId);
    expect(Object.keys(view).sort()).toEqual(["scales", "stones", "title"]);
    const input = JSON.stringify(view);
    await beSignedIn(school.ada);
    const student = unpack(new Uint8Array(await (await sheets("a4")).arrayBuffer()));
    for (const secret of Object.values(SECRETS).flat()) {
      expect(input).not.toContain(secret);
      expect(student).not.toContain(secret);
    }
    // Staff get the same sheets to the last stroke: but for dates and ids of the file, byte for byte.
    await beSignedIn(school.iris);
    const staff = unpack(new Uint8Array(await (await sheets("a4")).arrayBuffer()));
    const drawn = (text: string) =>
      [...text.matchAll(/^BT\n[\s\S]*?^ET$|^[-\d. ]+ (?:m|l|c|re)$/gm)].join("\n");
    expect(drawn(student).length).toBeGreaterThan(1000);
    expect(drawn(student)).toBe(drawn(staff));
  });

  it("are a student's own exercise's only, and only while it is open", async () => {
    await beSignedIn(school.cyd);
    expect((await sheets("a4")).status).toBe(404);
    await getDatabase().exercise.update({
      where: { id: school.exerciseId },
      data: { opensAt: new Date(Date.now() + 60_000) },
    });
    await beSignedIn(school.ada);
    expect((await sheets("a4")).status).toBe(410);
    await beSignedIn(school.iris);
    expect((await sheets("a4")).status).toBe(200);
  });
});

describe("a section's report", () => {
  const report = (paper: "a4" | "letter", query = "") =>
    reportRoute.GET(new Request(`http://localhost/report.pdf?paper=${paper}${query}`), {
      params: Promise.resolve({ sectionId: school.sectionId }),
    });

  it.each([
    ["a4", "0,0,595,842"],
    ["letter", "0,0,612,792"],
  ] as const)("on %s is had by who teaches the section, and by nobody else", async (paper, box) => {
    await beSignedIn(school.iris);
    const answer = await report(paper, `&exercise=${school.exerciseId}`);
    expect(answer.status).toBe(200);
    const text = unpack(new Uint8Array(await answer.arrayBuffer()));
    expect(countPages(text)).toBeGreaterThan(0);
    expect(new Set(listSizes(text).map(String))).toEqual(new Set([box]));
    await beSignedIn(school.otto);
    expect((await report(paper)).status).toBe(404);
    await beSignedIn(school.ada);
    expect((await report(paper)).status).toBe(404);
  });
});

describe("a debrief", () => {
  it("is had by its student once it is released, and by nobody else's", async () => {
    await beSignedIn(school.ben);
    const answer = await debrief(school.benReleased);
    expect(answer.status).toBe(200);
    const text = unpack(new Uint8Array(await answer.arrayBuffer()));
    expect(countPages(text)).toBeGreaterThan(0);
    expect(new Set(listSizes(text).map(String))).toEqual(new Set(["0,0,595,842"]));
    await beSignedIn(school.ada);
    expect((await debrief(school.benReleased)).status).toBe(404);
    expect((await debrief(school.adaScored)).status).toBe(404);
    await beSignedIn(school.otto);
    expect((await debrief(school.benReleased)).status).toBe(404);
  });
});
