/** The small version of `npm run fuzz`: broken files are taken or refused with a place, and never half written. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { hashTables } from "@/tests/fuzz/hash-tables";
import { type CaseOutcome, tally } from "@/tests/fuzz/judge-case";
import { IMPORTER_KINDS, type ImporterKind, tryImporter } from "@/tests/fuzz/try-database";
import { READER_KINDS, type ReaderKind, tryReader } from "@/tests/fuzz/try-readers";
import { createTestDatabase, type TestDatabase } from "@/tests/support/database";
import { buildSchool, makePerson, type School } from "@/tests/support/school";

const SEED = 7;
const READER_CASES = 80;
const IMPORTER_CASES = 20;

/** Both kinds of end must be among the cases, or nothing was tried. */
function expectClean(outcomes: (CaseOutcome & { at: string })[]): void {
  const { cases, accepted, refused, crashes } = tally(outcomes);
  expect(crashes).toEqual([]);
  expect(accepted + refused).toBe(cases);
  expect(Math.min(accepted, refused)).toBeGreaterThan(0);
}

describe("a broken file", () => {
  it.each(Object.keys(READER_KINDS) as ReaderKind[])("%s: is read or refused", async (kind) => {
    const outcomes = [];
    for (let index = 0; index < READER_CASES; index += 1) outcomes.push(await tryReader(kind, SEED, index));
    expectClean(outcomes);
  });
});

describe("a broken import", () => {
  let database: TestDatabase;
  let school: School;
  beforeAll(async () => {
    database = await createTestDatabase();
    school = await buildSchool();
  });
  afterAll(() => database.remove());

  it("the comparison of tables sees a single row", async () => {
    const before = await hashTables();
    expect(await hashTables()).toBe(before);

    await makePerson("zoe", "Zoe", "student");
    expect(await hashTables()).not.toBe(before);
  });

  it.each(Object.keys(IMPORTER_KINDS) as ImporterKind[])("%s: all of it or nothing", async (kind) => {
    const outcomes = [];
    for (let index = 0; index < IMPORTER_CASES; index += 1)
      outcomes.push(await tryImporter(kind, school, SEED, index));
    expectClean(outcomes);
  });
});
