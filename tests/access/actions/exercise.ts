/** Actions on exercises, sittings and the watch. */
import * as sittings from "@/app/(staff)/exercises/[exerciseId]/sittings/actions";
import * as exercises from "@/app/(staff)/exercises/actions";
import * as settings from "@/app/(staff)/settings/actions";
import * as watch from "@/app/(staff)/watch/actions";
import * as myStones from "@/app/(student)/my-stones/actions";
import { DEFAULT_RUBRIC } from "@/lib/plot/rubric";
import type { ActionCase } from "@/tests/access/action-case";
import { director, theirs } from "@/tests/access/action-case";
import { makeOpenDates, type School } from "@/tests/support/school";

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

export const EXERCISE_ACTIONS: Readonly<Record<string, ActionCase>> = {
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
  "(staff)/settings saveSettingsAction": {
    allowed: director,
    call: () => settings.saveSettingsAction({ baseRevision: 0, rubric: { ...DEFAULT_RUBRIC, near: 0.04 } }),
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
  "(staff)/watch sendNotesAction": {
    allowed: theirs,
    call: ({ adaOnBench }) => watch.sendNotesAction({ sittingIds: [adaOnBench], text: "Tilt it." }),
  },
  "(student)/my-stones openSittingAction": {
    allowed: ["ada", "ben"],
    call: ({ exerciseStoneIds }) => myStones.openSittingAction(exerciseStoneIds[1]),
  },
};
