/**
 * Rosters: columns of OneRoster 1.2 by check-values.md 9.1; zip bytes are written by fflate, a general-purpose library.
 * People and classes are invented.
 */
import { zipSync } from "fflate";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { isAppError } from "@/lib/base/app-error";
import { getDatabase } from "@/lib/data/store/database";
import { importRoster } from "@/lib/workflows/import-roster";
import { planRosterImport } from "@/lib/workflows/plan-roster-import";
import { countChanges } from "@/tests/access/count-changes";
import { createTestDatabase, type TestDatabase } from "@/tests/support/database";
import { buildSchool, type School } from "@/tests/support/school";

let database: TestDatabase;
let school: School;
beforeEach(async () => {
  database = await createTestDatabase();
  school = await buildSchool();
});
afterEach(() => database.remove());

const encode = (text: string) => new TextEncoder().encode(text);
type Files = { name: string; bytes: Uint8Array<ArrayBuffer> }[];
const plain = (text: string, name = "roster.csv") => [{ name, bytes: encode(text) }];
const plan = (files: Files, termOfNew = "") => planRosterImport(school.director, { files, termOfNew });

/** The refusal's faults, as `path: message`. */
async function refuse(files: Files): Promise<string[]> {
  const before = await countChanges();
  const thrown = await plan(files).then(
    ({ faults }) => ({ faults }),
    (error: unknown) => {
      if (!isAppError(error, "bad-input")) throw error;
      return error;
    },
  );
  expect(await countChanges()).toBe(before);
  return thrown.faults.map(({ path, message }) => `${path}: ${message}`);
}

const USERS =
  "sourcedId,status,dateLastModified,enabledUser,username,userIds,givenName,familyName,middleName,identifier,email,sms,phone,agentSourcedIds,grades,password,userMasterIdentifier,preferredGivenName,preferredMiddleName,preferredFamilyName,primaryOrgSourcedId,pronouns";
const user = (id: string, login: string, given: string, family: string, enabled = "true") =>
  `${id},,,${enabled},${login},,${given},${family},,,,,,,,,,,,,,`;
const ROLES =
  "sourcedId,status,dateLastModified,userSourcedId,roleType,role,beginDate,endDate,orgSourcedId,userProfileSourcedId";
const role = (id: string, word: string, type = "primary") => `r-${id}-${word},,,${id},${type},${word},,,o1,`;
const CLASSES =
  "sourcedId,status,dateLastModified,title,grades,courseSourcedId,classCode,classType,location,schoolSourcedId,termSourcedIds,subjects,subjectCodes,periods";
const ENROLLMENTS =
  "sourcedId,status,dateLastModified,classSourcedId,schoolSourcedId,userSourcedId,role,primary,beginDate,endDate";

const ONE_ROSTER = {
  "users.csv": [
    USERS,
    user("u1", "ada", "Ada", "Student"),
    user("u2", "noor@school.test", "Noor", "Vale"),
    user("u3", "teo", "Teo", "Instructor"),
    user("u4", "maud", "Maud", "Guardian"),
    user("u5", "off", "Left", "School", "false"),
  ].join("\r\n"),
  "roles.csv": [
    ROLES,
    role("u1", "student"),
    role("u2", "student"),
    role("u3", "teacher"),
    role("u4", "guardian"),
    role("u5", "student"),
  ].join("\r\n"),
  "classes.csv": [CLASSES, "c1,,,Loupe Lab,,co1,,scheduled,,o1,t1,,,"].join("\r\n"),
  "enrollments.csv": [
    ENROLLMENTS,
    "e1,,,c1,o1,u1,student,,,",
    "e2,,,c1,o1,u2,student,,,",
    "e3,,,c1,o1,u3,teacher,true,,",
    "e4,,,c1,o1,u5,student,,,",
  ].join("\r\n"),
  "academicSessions.csv":
    "sourcedId,status,dateLastModified,title,type,startDate,endDate,parentSourcedId,schoolYear\r\nt1,,,2027 spring,term,2027-01-01,2027-06-30,,2027",
};
type OneRoster = Partial<Record<keyof typeof ONE_ROSTER | "manifest.csv", string>>;
const loose = (files: OneRoster) =>
  Object.entries(files).map(([name, text]) => ({ name, bytes: encode(text) }));
const zip = (files: OneRoster, name = "export.zip") => [
  {
    name,
    bytes: new Uint8Array(
      zipSync(Object.fromEntries(Object.entries(files).map(([key, text]) => [key, encode(text)]))),
    ),
  },
];

describe("a plain roster", () => {
  const TEXT = [
    "login,name,section,role,term",
    "ada,Ada Student,Morning,,",
    "ben,Benjamin Student,Morning|Evening,student,",
    "noor,Noor Vale,Bench Two,student,2027 spring",
    "tove,Tove Lind,Bench Two,instructor,2027 spring",
  ].join("\n");

  it("is told row by row, then brought in as it was told, with a trail", async () => {
    const files = plain(TEXT);
    const before = await countChanges();
    const shown = await plan(files);
    expect(await countChanges()).toBe(before);
    expect(shown.rows.map(({ login, state }) => [login, state])).toEqual([
      ["ada", "same"],
      ["ben", "changed"],
      ["noor", "made"],
      ["tove", "made"],
    ]);
    expect(shown.rows[1]?.changes).toEqual([
      "name: Ben Student becomes Benjamin Student",
      "enrolled in Evening, 2026 autumn",
    ]);
    expect(shown.sections).toEqual([{ name: "Bench Two", term: "2027 spring" }]);
    const done = await importRoster(school.director, { files, fingerprint: shown.fingerprint });
    expect([done.newUserIds.length, done.changed, done.sections]).toEqual([2, 1, 1]);
    const made = await getDatabase().user.findMany({
      where: { id: { in: done.newUserIds } },
      orderBy: { login: "asc" },
      include: { enrolments: true, teaches: true },
    });
    expect(
      made.map((one) => [one.login, one.role, one.passwordHash, one.enrolments.length, one.teaches.length]),
    ).toEqual([
      ["noor", "student", "-", 1, 0],
      ["tove", "instructor", "-", 0, 1],
    ]);
    expect(await getDatabase().trailEntry.count({ where: { action: "import-roster" } })).toBe(1);
    expect((await plan(files)).rows.every(({ state }) => state === "same")).toBe(true);
    await expect(
      importRoster(school.director, { files, fingerprint: shown.fingerprint }),
    ).rejects.toMatchObject({ code: "conflict" });
  });

  it("refuses whole, with row and column", async () => {
    const bad = [
      "login,name,section,role",
      "Ada Lovely,Ada,Morning,student",
      "cyd,,Morning,student",
      "dee,Dee,Nowhere,student",
      "otto,Otto Instructor,Morning,student",
      "fay,Fay,Morning,director",
      "gus,Gus,Morning,pupil",
    ].join("\n");
    expect(await refuse(plain(bad))).toEqual([
      "roster.csv row 2, login: may hold a to z, digits, and . - _ between them",
      "roster.csv row 3, name: must not be empty",
      "roster.csv row 6, role: a director is added by hand, not by a roster",
      "roster.csv row 7, role: “pupil” is no role: student or instructor",
      "roster.csv row 4, section: there is no section “Nowhere”, and to make it a term must be said",
      "roster.csv row 5: “otto” is instructor here, student in the roster: a roster changes no roles",
    ]);
    const shown = await plan(plain(bad));
    await expect(
      importRoster(school.director, { files: plain(bad), fingerprint: shown.fingerprint }),
    ).rejects.toMatchObject({ code: "bad-input" });
  });

  it("takes a byte order mark and a spreadsheet's semicolons, and keeps formulas and markup as mere text", async () => {
    const name = '=HYPERLINK("http://x";"y")';
    const text = `\uFEFFlogin;name;section\r\nnora;"${name.replaceAll('"', '""')}";Morning\r\nhtml;<img src=x onerror=alert(1)>;Morning\r\n`;
    const files = plain(text);
    const shown = await plan(files);
    await importRoster(school.director, { files, fingerprint: shown.fingerprint });
    const names = await getDatabase().user.findMany({ where: { login: { in: ["nora", "html"] } } });
    expect(names.map((one) => one.name).sort()).toEqual(["<img src=x onerror=alert(1)>", name]);
  });

  it.each([
    ["UTF-16", new Uint8Array([0xff, 0xfe, 0x6c, 0]), /is UTF-16 text, not UTF-8: save it as “CSV UTF-8”/],
    ["Latin-1", new Uint8Array([...encode("login,name\nx1,Ren"), 0xe9]), /is not UTF-8 text/],
    [
      "a picture called CSV",
      new Uint8Array([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0]),
      /is not UTF-8 text/,
    ],
    ["bytes of nothing", new Uint8Array([0, 0, 0, 0]), /is no text/],
    ["an empty file", new Uint8Array(), /row 1: holds no heads/],
    ["JSON", encode('{"login":"x"}'), /the column login is missing/],
    ["a quote that does not close", encode('login,name\nx1,"Ada'), /row \d+: quoted field unterminated/],
    ["an unknown column", encode("login,name,sections\n"), /“sections” is none of the columns/],
    ["a column twice", encode("login,name,name\n"), /the head “name” stands twice/],
    ["a row that is too long", encode("login,name\nx1,Ada,Morning\n"), /row 2: has more cells/],
    [
      "two names for one person",
      encode("login,name\nx1,Ada\nx1,Bea\n"),
      /row 3, name: differs from roster.csv row 2/,
    ],
    ["a file that is too large", new Uint8Array(5_000_001), /larger than 5 MB/],
    ["too many rows", encode(`login,name\n${"x1,Ada\n".repeat(20_001)}`), /more than 20000 rows/],
  ])("refuses %s", async (_what, bytes, words) => {
    expect((await refuse([{ name: "roster.csv", bytes }])).join("\n")).toMatch(words);
  });
});

describe("OneRoster 1.2", () => {
  it.each([
    ["loose files", loose(ONE_ROSTER)],
    [
      "a zip",
      zip({
        ...ONE_ROSTER,
        "manifest.csv": "propertyName,value\r\nmanifest.version,1.0\r\noneroster.version,1.2",
      }),
    ],
    ["a zip by another name", zip(ONE_ROSTER, "roster.csv")],
  ])("is read from %s", async (_what, files) => {
    const shown = await plan(files);
    expect(shown.faults).toEqual([]);
    expect(shown.form).toBe("oneroster");
    expect(
      shown.rows.map(({ login, role: is, state, changes }) => [login, is, state, changes.join("; ")]),
    ).toEqual([
      ["ada", "student", "changed", "enrolled in Loupe Lab, 2027 spring (new)"],
      ["noor", "student", "made", "enrolled in Loupe Lab, 2027 spring (new)"],
      ["teo", "instructor", "made", "teaches Loupe Lab, 2027 spring (new)"],
      ["maud", null, "left-out", "has the role guardian"],
      ["off", null, "left-out", "is not enabled"],
    ]);
    await importRoster(school.director, { files, fingerprint: shown.fingerprint });
    const section = await getDatabase().section.findFirstOrThrow({
      where: { name: "Loupe Lab" },
      include: { enrolments: true, instructors: true },
    });
    expect([section.term, section.enrolments.length, section.instructors.length]).toEqual([
      "2027 spring",
      2,
      1,
    ]);
  });

  it("of version 1.1, whose users carry their role, is read too", async () => {
    const users = [
      "sourcedId,status,dateLastModified,enabledUser,orgSourcedIds,role,username,userIds,givenName,familyName",
      "u1,,,true,o1,student,zed,,Zed,Student",
    ].join("\n");
    const shown = await plan(loose({ "users.csv": users }));
    expect(shown.rows.map(({ login, state }) => [login, state])).toEqual([["zed", "made"]]);
  });

  it.each([
    ["no roles", { ...ONE_ROSTER, "roles.csv": undefined }, /roles.csv: is missing/],
    [
      "a column missing",
      { ...ONE_ROSTER, "classes.csv": "sourcedId,name\nc1,x" },
      /classes.csv row 1: the column title is missing/,
    ],
    [
      "an enrolment of nobody",
      { ...ONE_ROSTER, "enrollments.csv": `${ENROLLMENTS}\ne9,,,c1,o1,u99,student,,,` },
      /enrollments.csv row 2, userSourcedId: is no user/,
    ],
    [
      "an enrolment in nothing",
      { ...ONE_ROSTER, "enrollments.csv": `${ENROLLMENTS}\ne9,,,c9,o1,u1,student,,,` },
      /row 2, classSourcedId: is no class/,
    ],
    [
      "a teacher who is a student",
      { ...ONE_ROSTER, "enrollments.csv": `${ENROLLMENTS}\ne9,,,c1,o1,u1,teacher,,,` },
      /row 2, role: is teacher/,
    ],
  ] as const)("refuses %s", async (_what, files, words) => {
    const given = Object.fromEntries(Object.entries(files).filter(([, text]) => text !== undefined));
    expect((await refuse(loose(given))).join("\n")).toMatch(words);
  });
});

describe("zips that are not to be trusted", () => {
  const one = (bytes: Uint8Array, name = "export.zip") => [{ name, bytes: new Uint8Array(bytes) }];

  it("that swell beyond the limit are refused before they have", async () => {
    const bomb = zipSync({ "users.csv": new Uint8Array(200_000_000) }, { level: 9 });
    expect(bomb.length).toBeLessThan(500_000);
    const before = process.memoryUsage().arrayBuffers;
    expect((await refuse(one(bomb))).join()).toMatch(/users.csv: holds more than 10000000 bytes/);
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(60_000_000);
  });

  it("of very many files, of files that together are too large, cut off, damaged, nested or empty are refused", async () => {
    const many = zipSync(
      Object.fromEntries(Array.from({ length: 65 }, (_, at) => [`f${at}.csv`, encode("a")])),
    );
    expect((await refuse(one(many))).join()).toMatch(/more than 64 files/);
    const heavy = zipSync(
      Object.fromEntries([1, 2, 3, 4].map((at) => [`f${at}.csv`, new Uint8Array(9_000_000)])),
    );
    expect((await refuse(one(heavy))).join()).toMatch(/the zip holds more than 30000000 bytes/);
    const [{ bytes = new Uint8Array() } = {}] = zip(ONE_ROSTER);
    expect((await refuse(one(bytes.slice(0, 300)))).join()).toMatch(/cut off|damaged/);
    const damaged = bytes.slice();
    damaged.fill(0xff, 60, 120);
    expect((await refuse(one(damaged))).length).toBeGreaterThan(0);
    expect((await refuse(one(zipSync({ "inner.zip": bytes })))).join()).toMatch(/is a zip within the zip/);
    expect((await refuse(one(encode("PK\u0003\u0004")))).length).toBeGreaterThan(0);
    expect((await refuse([...one(bytes), ...plain("login,name")])).join()).toMatch(/choose it alone/);
  });
});
