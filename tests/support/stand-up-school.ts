import { afterAll, afterEach, beforeAll, beforeEach } from "vitest";
import { createTestDatabase, keepSnapshot, type TestDatabase } from "@/tests/support/database";

/**
 * Builds a school once for a test file and gives each of its tests a fresh copy of it: to be called at the top of the
 * file. `build` fills the database that the process points at and keeps what the tests go by.
 */
export function standUpSchool(build: () => Promise<void>): void {
  let template: TestDatabase;
  let snapshot: string;
  let current: TestDatabase;
  beforeAll(async () => {
    template = await createTestDatabase();
    await build();
    snapshot = await keepSnapshot(template);
  });
  beforeEach(async () => {
    current = await createTestDatabase(snapshot);
  });
  afterEach(() => current.remove());
  afterAll(() => template.remove());
}
