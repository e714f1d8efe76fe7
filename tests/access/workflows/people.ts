/** Workflows on people, sections and rosters. */
import { createAccessLinks } from "@/lib/workflows/create-access-links";
import { createPerson } from "@/lib/workflows/create-person";
import { createSection } from "@/lib/workflows/create-section";
import { enrolStudents } from "@/lib/workflows/enrol-students";
import { erasePerson } from "@/lib/workflows/erase-person";
import { importRoster } from "@/lib/workflows/import-roster";
import { planRosterImport } from "@/lib/workflows/plan-roster-import";
import { resetPassword } from "@/lib/workflows/reset-password";
import { setPassword } from "@/lib/workflows/set-password";
import { setPersonActive } from "@/lib/workflows/set-person-active";
import { type AccessCase, makeCase } from "@/tests/access/access-case";
import { director, theirs, withoutId } from "@/tests/access/outcomes";
import { PASSWORD } from "@/tests/support/school";

const roster = {
  files: [{ name: "roster.csv", bytes: new TextEncoder().encode("login,name\nnewcomer,New Comer\n") }],
  termOfNew: "",
};

export const PEOPLE_WORKFLOWS: Readonly<Record<string, AccessCase>> = {
  "plan-roster-import planRosterImport": makeCase(
    director,
    (viewer) => planRosterImport(viewer, roster),
    withoutId,
  ),
  "import-roster importRoster": makeCase(
    director,
    async (viewer, school) => {
      const { fingerprint } = await planRosterImport(school.director, roster);
      return importRoster(viewer, { ...roster, fingerprint });
    },
    withoutId,
  ),
  "create-access-links createAccessLinks": makeCase(theirs, (viewer, { ben }) =>
    createAccessLinks(viewer, { userIds: [ben.userId] }),
  ),
  "erase-person erasePerson": makeCase(director, (viewer, { ben }) =>
    erasePerson(viewer, { userId: ben.userId }),
  ),
  "create-person createPerson": makeCase(
    director,
    (viewer) => createPerson(viewer, { login: "new", name: "New", role: "student", password: PASSWORD }),
    withoutId,
  ),
  "set-person-active setPersonActive": makeCase(director, (viewer, { ben }) =>
    setPersonActive(viewer, { userId: ben.userId, active: false }),
  ),
  "set-password setPassword": makeCase(
    ["ok", "ok", "ok", "ok", "ok", "ok"],
    (viewer) => setPassword(viewer, { current: PASSWORD, next: "another long one" }),
    withoutId,
  ),
  "reset-password resetPassword": makeCase(director, (viewer, { ben }) =>
    resetPassword(viewer, { userId: ben.userId, password: "another long one" }),
  ),
  "create-section createSection": makeCase(
    director,
    (viewer) => createSection(viewer, { name: "New", term: "now", instructorIds: [] }),
    withoutId,
  ),
  "enrol-students enrolStudents": makeCase(theirs, (viewer, { sectionId, cyd }) =>
    enrolStudents(viewer, { sectionId, studentIds: [cyd.userId] }),
  ),
};
