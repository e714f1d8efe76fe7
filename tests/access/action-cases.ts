/** Every server action: each is an endpoint of its own that a browser may call with anything. */

import * as sittings from "@/app/(staff)/exercises/[exerciseId]/sittings/actions";
import * as exercises from "@/app/(staff)/exercises/actions";
import * as people from "@/app/(staff)/people/actions";
import * as stones from "@/app/(staff)/trays/[trayId]/stones/actions";
import * as trays from "@/app/(staff)/trays/actions";
import * as out from "@/app/(staff)/trays/out/actions";
import * as watch from "@/app/(staff)/watch/actions";
import * as check from "@/app/(student)/check/actions";
import * as myStones from "@/app/(student)/my-stones/actions";
import * as account from "@/app/account/actions";
import * as setPassword from "@/app/set-password/actions";
import * as welcome from "@/app/welcome/actions";
import { DEFAULT_RUBRIC } from "@/lib/plot/rubric";
import { toStoneCode } from "@/lib/plot/stone-code";
import { planExerciseSetImport } from "@/lib/workflows/plan-exercise-set-import";
import { planRosterImport } from "@/lib/workflows/plan-roster-import";
import type { Caller } from "@/tests/access/access-case";
import { makeSampleSet } from "@/tests/support/sample-set";
import { makeOpenDates, PASSWORD, READING, REFERENCE, type School, SEEN } from "@/tests/support/school";

export interface ActionCase {
  /** Who is not refused. */
  readonly allowed: readonly Caller[];
  readonly call: (school: School) => Promise<{ readonly ok: boolean }>;
}

const staff = ["director", "iris", "otto"] as const;
const theirs = ["director", "iris"] as const;
const director = ["director"] as const;
const everyone = ["director", "iris", "otto", "ada", "ben", "cyd"] as const;

const body = { cut: "round-brilliant", proportions: {} };
const tray = { name: "New", notes: "" };
const password = "another long one";
const ROSTER = "login,name\nnewcomer,New Comer\n";
function makeForm(): FormData {
  const form = new FormData();
  form.append("files", new File([ROSTER], "roster.csv"));
  return form;
}
const exercise = ({ sectionId, stoneIds }: School) => ({
  sectionId,
  title: "Another",
  notes: "",
  ...makeOpenDates(),
  rules: { preparation: "asked", schoolRules: "" },
  orientation: "free",
  stoneIds: [...stoneIds],
  stoneOpenings: {},
  revision: 1,
});

export const ACTION_CASES: Readonly<Record<string, ActionCase>> = {
  "(staff)/exercises createExerciseAction": {
    allowed: theirs,
    call: (school) => exercises.createExerciseAction(exercise(school)),
  },
  "(staff)/exercises updateExerciseAction": {
    allowed: theirs,
    call: (school) => exercises.updateExerciseAction(school.exerciseId, exercise(school)),
  },
  "(staff)/exercises releaseDebriefsAction": {
    allowed: theirs,
    call: ({ exerciseId, adaScored }) => exercises.releaseDebriefsAction(exerciseId, [adaScored]),
  },
  "(staff)/exercises withdrawReleaseAction": {
    allowed: theirs,
    call: ({ exerciseId, benReleased }) => exercises.withdrawReleaseAction(exerciseId, [benReleased]),
  },
  "(staff)/exercises/[exerciseId]/sittings overruleAction": {
    allowed: theirs,
    call: ({ adaScored: sittingId }) =>
      sittings.overruleAction({
        sittingId,
        baseRevision: 2,
        ruling: { kind: "cause", mark: "m1", cause: null },
        reason: "As seen at the desk.",
      }),
  },
  "(staff)/exercises/[exerciseId]/sittings undoOverruleAction": {
    allowed: theirs,
    call: ({ adaScored: sittingId, overruleId }) =>
      sittings.undoOverruleAction({ sittingId, baseRevision: 2, overruleId }),
  },
  "(staff)/exercises/[exerciseId]/sittings writeCommentAction": {
    // A comment is changed by whoever wrote it.
    allowed: ["iris"],
    call: ({ adaScored: sittingId, commentId }) =>
      sittings.writeCommentAction({ sittingId, baseRevision: 2, commentId, subject: null, text: "Look." }),
  },
  "(staff)/exercises/[exerciseId]/sittings deleteCommentAction": {
    allowed: ["iris"],
    call: ({ adaScored: sittingId, commentId }) =>
      sittings.deleteCommentAction({ sittingId, baseRevision: 2, commentId }),
  },
  "(staff)/exercises/[exerciseId]/sittings acceptStrayAction": {
    allowed: theirs,
    call: ({ adaScored: sittingId }) =>
      sittings.acceptStrayAction({
        sittingId,
        markId: "m1",
        baseVersion: 1,
        extent: { kind: "dot" },
        as: { kind: "decoy", cause: "echo" },
      }),
  },
  "(staff)/exercises/[exerciseId]/sittings setReleasedAction": {
    allowed: theirs,
    call: ({ adaScored }) => sittings.setReleasedAction(adaScored, true),
  },
  "(staff)/exercises grantExtraTimeAction": {
    allowed: theirs,
    call: ({ exerciseId, ada }) =>
      exercises.grantExtraTimeAction(exerciseId, { studentId: ada.userId, extraMinutes: 5, reason: "" }),
  },
  "(staff)/exercises grantExtensionAction": {
    allowed: theirs,
    call: ({ exerciseId, ada }) =>
      exercises.grantExtensionAction(exerciseId, {
        studentId: ada.userId,
        dueAt: null,
        closesAt: null,
        extraAttempts: 1,
        reason: "",
      }),
  },
  "(staff)/exercises listRetakeStonesAction": {
    allowed: theirs,
    call: ({ exerciseId, exerciseStoneIds, ada }) =>
      exercises.listRetakeStonesAction(exerciseId, {
        studentId: ada.userId,
        exerciseStoneId: exerciseStoneIds[0],
      }),
  },
  "(staff)/exercises grantRetakeAction": {
    allowed: theirs,
    call: ({ exerciseId, exerciseStoneIds, ada }) =>
      exercises.grantRetakeAction(exerciseId, {
        studentId: ada.userId,
        exerciseStoneId: exerciseStoneIds[0],
        stoneId: null,
        reason: "",
      }),
  },
  "(staff)/exercises saveRubricAction": {
    allowed: theirs,
    call: ({ exerciseId }) =>
      exercises.saveRubricAction(exerciseId, { baseVersion: 2, rubric: DEFAULT_RUBRIC }),
  },
  "(staff)/exercises startRescoreAction": {
    allowed: theirs,
    call: ({ exerciseId }) => exercises.startRescoreAction(exerciseId),
  },
  "(staff)/exercises applyRescoreAction": {
    allowed: theirs,
    call: ({ exerciseId, rescoreId }) => exercises.applyRescoreAction(exerciseId, rescoreId),
  },
  "(staff)/exercises discardRescoreAction": {
    allowed: theirs,
    call: ({ exerciseId, rescoreId }) => exercises.discardRescoreAction(exerciseId, rescoreId),
  },
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
  "(staff)/trays createTrayAction": { allowed: staff, call: () => trays.createTrayAction(tray) },
  "(staff)/trays updateTrayAction": {
    allowed: theirs,
    call: ({ trayId }) => trays.updateTrayAction(trayId, tray),
  },
  "(staff)/trays planSetImportAction": {
    allowed: staff,
    call: () => trays.planSetImportAction({ json: makeSampleSet(), trayId: null, trayName: "New" }),
  },
  "(staff)/trays importSetAction": {
    allowed: theirs,
    call: async ({ trayId, director }) => {
      const set = { json: makeSampleSet(), trayId, trayName: "New" };
      const { fingerprint } = await planExerciseSetImport(director, set);
      return trays.importSetAction({ ...set, fingerprint });
    },
  },
  "(staff)/exercises duplicateExerciseAction": {
    allowed: theirs,
    call: ({ exerciseId, sectionId }) =>
      exercises.duplicateExerciseAction({
        exerciseId,
        sectionId,
        title: "Again",
        opensAt: "2027-02-01T08:00:00Z",
      }),
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
  "(staff)/trays/[trayId]/stones createStoneAction": {
    allowed: theirs,
    call: ({ trayId }) => stones.createStoneAction(trayId, { label: "T-9", body, revision: 0 }),
  },
  "(staff)/trays/[trayId]/stones updateStoneAction": {
    allowed: theirs,
    call: ({ stoneIds }) => stones.updateStoneAction(stoneIds[0], { label: "T-1", body, revision: 1 }),
  },
  "(staff)/trays/[trayId]/stones saveReferenceAction": {
    allowed: theirs,
    call: ({ stoneIds }) =>
      stones.saveReferenceAction(stoneIds[0], { baseVersion: 1, reference: REFERENCE, note: "" }),
  },
  "(staff)/watch sendNotesAction": {
    allowed: theirs,
    call: ({ adaOnBench }) => watch.sendNotesAction({ sittingIds: [adaOnBench], text: "Tilt it." }),
  },
  "(staff)/trays/[trayId]/stones updatePhotoAction": {
    allowed: theirs,
    call: ({ photoId }) => stones.updatePhotoAction({ photoId, caption: "", isShown: true }),
  },
  "(staff)/trays/[trayId]/stones orderPhotosAction": {
    allowed: theirs,
    call: ({ stoneIds, photoId }) => stones.orderPhotosAction(stoneIds[0], [photoId]),
  },
  "(staff)/trays/[trayId]/stones deletePhotoAction": {
    allowed: theirs,
    call: ({ photoId }) => stones.deletePhotoAction(photoId),
  },
  "(staff)/trays/out handOutAction": {
    allowed: staff,
    call: ({ stoneIds }) =>
      out.handOutAction({ stoneIds: [...stoneIds], to: { kind: "seat", seat: "Bench 4" }, dueBackAt: null }),
  },
  "(staff)/trays/out takeBackAction": {
    // The stones are in their tray.
    allowed: [],
    call: ({ stoneIds }) => out.takeBackAction([...stoneIds]),
  },
  "(staff)/trays/out scanAction": {
    allowed: staff,
    call: ({ stoneIds }) => out.scanAction(toStoneCode(stoneIds[0])),
  },
  "(staff)/trays/out checkStoneAction": {
    // Otto reads a stone of the tray blind.
    allowed: ["director", "iris"],
    call: ({ trayId, stoneIds }) =>
      out.checkStoneAction({
        trayId,
        stoneId: stoneIds[0],
        evidence: { ...SEEN, cut: "round-brilliant" },
      }),
  },
  "(staff)/trays/out settleStoneCheckAction": {
    allowed: staff,
    call: ({ checkId }) => out.settleStoneCheckAction(checkId),
  },
  "(student)/check sendStoneCheckAction": {
    allowed: ["ada", "ben"],
    call: ({ exerciseStoneIds }) =>
      check.sendStoneCheckAction({ exerciseStoneId: exerciseStoneIds[0], evidence: SEEN }),
  },
  "(staff)/trays/[trayId]/stones dismissSuggestionAction": {
    // The school's few hand-ins suggest nothing, which is a refusal to everybody.
    allowed: [],
    call: ({ stoneIds }) => stones.dismissSuggestionAction(stoneIds[0], "crown:0.000:0.000"),
  },
  "(staff)/trays/[trayId]/stones startSecondReadingAction": {
    allowed: ["director", "otto"],
    call: ({ stoneIds }) => stones.startSecondReadingAction(stoneIds[1]),
  },
  "(staff)/trays/[trayId]/stones saveSecondReadingAction": {
    allowed: ["otto"],
    call: ({ openReadingId }) =>
      stones.saveSecondReadingAction(openReadingId, { revision: 2, plot: READING }),
  },
  "(staff)/trays/[trayId]/stones handInSecondReadingAction": {
    allowed: ["otto"],
    call: ({ openReadingId }) =>
      stones.handInSecondReadingAction(openReadingId, { revision: 2, plot: READING }),
  },
  "(staff)/trays/[trayId]/stones giveUpSecondReadingAction": {
    allowed: ["otto"],
    call: ({ openReadingId }) => stones.giveUpSecondReadingAction(openReadingId),
  },
  "(staff)/trays/[trayId]/stones settleSecondReadingAction": {
    allowed: theirs,
    call: ({ readingId }) =>
      stones.settleSecondReadingAction(readingId, { baseVersion: 1, choices: {}, note: "" }),
  },
  "(student)/my-stones openSittingAction": {
    allowed: ["ada", "ben"],
    call: ({ exerciseStoneIds }) => myStones.openSittingAction(exerciseStoneIds[1]),
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
