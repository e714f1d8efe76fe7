/** The access table itself, and that a list is narrowed by the same rules as a single thing is held against. */
import { describe, expect, it } from "vitest";
import { ACCESS_TABLE, type Action } from "@/lib/access/access-table";
import { can } from "@/lib/access/can";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getReviewGrid } from "@/lib/data/get-review-grid";
import { listExercises } from "@/lib/data/list-exercises";
import { listMyExercises } from "@/lib/data/list-my-exercises";
import { listSections } from "@/lib/data/list-sections";
import { createTestDatabase } from "@/tests/support/database";
import { buildSchool } from "@/tests/support/school";

const ACTIONS = Object.keys(ACCESS_TABLE) as Action[];
const be = (role: Viewer["role"]): Viewer => ({ userId: "me", role, name: "Me" });

describe("the table", () => {
  it("lets a student do only what is a student's, and never `any`", () => {
    const may = ACTIONS.filter((action) => ACCESS_TABLE[action].student !== "never");
    expect(may.sort()).toEqual([
      "change-own-password",
      "list-my-exercises",
      "open-sitting",
      "read-bench",
      "read-debrief",
      "read-own-data",
      "read-photo",
      "read-progress",
      "read-worksheet",
      "send-stone-check",
      "write-bench",
    ]);
    expect(ACTIONS.filter((action) => (ACCESS_TABLE[action].student as string) === "any")).toEqual([]);
  });

  it("lets nobody but its student write a bench or read it as a bench", () => {
    for (const action of ["read-bench", "write-bench"] as const) {
      expect(ACCESS_TABLE[action]).toEqual({ student: "own", instructor: "never", director: "never" });
    }
  });

  it("opens a debrief to its student only once it is released", () => {
    const own = { ownerId: "me", instructorIds: ["other"] };
    expect(can(be("student"), "read-debrief", own)).toBe(false);
    expect(can(be("student"), "read-debrief", { ...own, released: true })).toBe(true);
    expect(can(be("student"), "read-debrief", { ownerId: "other", released: true })).toBe(false);
  });

  it("takes what is left out for not so, under every rule but `any`", () => {
    for (const action of ACTIONS) {
      for (const role of ["student", "instructor", "director"] as const) {
        expect(can(be(role), action)).toBe(ACCESS_TABLE[action][role] === "any");
      }
    }
  });

  it("tells a student of nothing that is not allowed, and staff of what their role does not include", () => {
    expect(() => requireRole(be("student"), "read-trail")).toThrow(/no such thing/);
    expect(() => requireAccess(be("student"), "read-bench", null)).toThrow(/no such thing/);
    expect(() => requireRole(be("instructor"), "read-trail")).toThrow(/role/);
  });
});

describe("lists", () => {
  it("hold what the viewer may open one by one, and nothing else", async () => {
    const database = await createTestDatabase();
    const school = await buildSchool();
    const both = [school.exerciseId, school.otherExerciseId];
    for (const viewer of [school.director, school.iris, school.otto]) {
      const listed = (await listExercises(viewer)).map(({ exerciseId }) => exerciseId);
      for (const exerciseId of both) {
        const opened = await getReviewGrid(viewer, exerciseId).then(
          () => true,
          () => false,
        );
        expect(listed.includes(exerciseId)).toBe(opened);
      }
    }
    expect((await listSections(school.otto)).map(({ name }) => name)).toEqual(["Evening"]);
    expect(await listMyExercises(school.ada)).toMatchObject([{ exerciseId: school.exerciseId }]);
    expect(await listMyExercises(school.cyd)).toMatchObject([{ exerciseId: school.otherExerciseId }]);
    await database.remove();
  });
});
