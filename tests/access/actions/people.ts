/** Actions on people, sections and one's own account. */
import * as people from "@/app/(staff)/people/actions";
import * as account from "@/app/account/actions";
import * as setPassword from "@/app/set-password/actions";
import * as welcome from "@/app/welcome/actions";
import { planRosterImport } from "@/lib/workflows/plan-roster-import";
import type { ActionCase } from "@/tests/access/action-case";
import { director, everyone, theirs } from "@/tests/access/action-case";
import { PASSWORD } from "@/tests/support/school";

const password = "another long one";
const ROSTER = "login,name\nnewcomer,New Comer\n";
function makeForm(): FormData {
  const form = new FormData();
  form.append("files", new File([ROSTER], "roster.csv"));
  return form;
}

export const PEOPLE_ACTIONS: Readonly<Record<string, ActionCase>> = {
  "(staff)/people createPersonAction": {
    allowed: director,
    call: ({ sectionId }) =>
      people.createPersonAction({
        name: "New",
        login: "new",
        role: "student",
        password,
        sectionIds: [sectionId],
      }),
  },
  "(staff)/people setPersonActiveAction": {
    allowed: director,
    call: ({ ben }) => people.setPersonActiveAction({ userId: ben.userId, active: true }),
  },
  "(staff)/people resetPasswordAction": {
    allowed: director,
    call: ({ ben }) => people.resetPasswordAction({ userId: ben.userId, password }),
  },
  "(staff)/people createSectionAction": {
    allowed: director,
    call: () => people.createSectionAction({ name: "New", term: "now", instructorIds: [] }),
  },
  "(staff)/people enrolStudentsAction": {
    allowed: theirs,
    call: ({ sectionId, cyd }) => people.enrolStudentsAction(sectionId, [cyd.userId]),
  },
  "(staff)/people planRosterAction": { allowed: director, call: () => people.planRosterAction(makeForm()) },
  "(staff)/people importRosterAction": {
    allowed: director,
    call: async (school) => {
      const bytes = new TextEncoder().encode(ROSTER);
      const plan = await planRosterImport(school.director, { files: [{ name: "roster.csv", bytes }] });
      return people.importRosterAction(makeForm(), plan.fingerprint);
    },
  },
  "(staff)/people createLinksAction": {
    allowed: theirs,
    call: ({ ben }) => people.createLinksAction([ben.userId]),
  },
  "(staff)/people erasePersonAction": {
    allowed: director,
    call: ({ ben }) => people.erasePersonAction(ben.userId),
  },
  // The token is what lets in, whoever is signed in: a wrong one helps nobody.
  "set-password readLinkAction": { allowed: [], call: () => setPassword.readLinkAction("x".repeat(43)) },
  "set-password redeemLinkAction": {
    allowed: [],
    call: () => setPassword.redeemLinkAction({ token: "x".repeat(43), password }),
  },
  "account changePasswordAction": {
    allowed: everyone,
    call: () => account.changePasswordAction({ current: PASSWORD, next: password }),
  },
  "welcome createFirstDirectorAction": {
    allowed: [],
    call: () => welcome.createFirstDirectorAction({ name: "Mallory", login: "mallory", password }),
  },
};
