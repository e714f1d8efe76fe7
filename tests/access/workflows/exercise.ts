/** Workflows on exercises: setting them, their rubric, what holds for one student, and what they add up to. */
import { DEFAULT_RUBRIC } from "@/lib/plot/rubric";
import { applyRescore } from "@/lib/workflows/apply-rescore";
import { createExercise } from "@/lib/workflows/create-exercise";
import { discardRescore } from "@/lib/workflows/discard-rescore";
import { duplicateExercise } from "@/lib/workflows/duplicate-exercise";
import { exportGradebook } from "@/lib/workflows/export-gradebook";
import { exportItems } from "@/lib/workflows/export-items";
import { getProgramReport } from "@/lib/workflows/get-program-report";
import { getProgress } from "@/lib/workflows/get-progress";
import { getSectionReport } from "@/lib/workflows/get-section-report";
import { grantExtension } from "@/lib/workflows/grant-extension";
import { grantExtraTime } from "@/lib/workflows/grant-extra-time";
import { grantRetake } from "@/lib/workflows/grant-retake";
import { listRetakeStones } from "@/lib/workflows/list-retake-stones";
import { saveRubric } from "@/lib/workflows/save-rubric";
import { startRescore } from "@/lib/workflows/start-rescore";
import { updateExercise } from "@/lib/workflows/update-exercise";
import { updateProgramSettings } from "@/lib/workflows/update-program-settings";
import { type AccessCase, makeCase } from "@/tests/access/access-case";
import { director, no, theirs, withoutId } from "@/tests/access/outcomes";
import { makeOpenDates } from "@/tests/support/school";

const exercise = { title: "Another", notes: "", rules: { preparation: "asked" as const, schoolRules: "" } };

export const EXERCISE_WORKFLOWS: Readonly<Record<string, AccessCase>> = {
  "duplicate-exercise duplicateExercise": makeCase(theirs, (viewer, { exerciseId, sectionId }) =>
    duplicateExercise(viewer, { exerciseId, sectionId, title: "Again", opensAt: "2027-02-01T08:00:00Z" }),
  ),
  "create-exercise createExercise": makeCase(theirs, (viewer, { sectionId, stoneIds }) =>
    createExercise(viewer, { ...exercise, ...makeOpenDates(), sectionId, stoneIds: [...stoneIds] }),
  ),
  "update-exercise updateExercise": makeCase(theirs, (viewer, { exerciseId, stoneIds }) =>
    updateExercise(viewer, {
      ...exercise,
      ...makeOpenDates(),
      exerciseId,
      revision: 1,
      stoneIds: [...stoneIds],
    }),
  ),
  "grant-extra-time grantExtraTime": makeCase(theirs, (viewer, { exerciseId, ada }) =>
    grantExtraTime(viewer, { exerciseId, studentId: ada.userId, extraMinutes: 5, reason: "" }),
  ),
  "grant-extension grantExtension": makeCase(theirs, (viewer, { exerciseId, ada }) =>
    grantExtension(viewer, {
      exerciseId,
      studentId: ada.userId,
      dueAt: new Date(Date.now() + 5 * 86_400_000).toISOString(),
      closesAt: null,
      extraAttempts: 1,
    }),
  ),
  "grant-retake grantRetake": makeCase(theirs, (viewer, { exerciseId, exerciseStoneIds, ada }) =>
    grantRetake(viewer, {
      exerciseId,
      exerciseStoneId: exerciseStoneIds[0],
      studentId: ada.userId,
      stoneId: null,
    }),
  ),
  "list-retake-stones listRetakeStones": makeCase(theirs, (viewer, { exerciseId, exerciseStoneIds, ada }) =>
    listRetakeStones(viewer, { exerciseId, exerciseStoneId: exerciseStoneIds[0], studentId: ada.userId }),
  ),
  "save-rubric saveRubric": makeCase(theirs, (viewer, { exerciseId }) =>
    saveRubric(viewer, { exerciseId, baseVersion: 2, rubric: { ...DEFAULT_RUBRIC, near: 0.04 } }),
  ),
  "update-program-settings updateProgramSettings": makeCase(
    director,
    (viewer) => updateProgramSettings(viewer, { baseRevision: 0, rubric: { ...DEFAULT_RUBRIC, near: 0.04 } }),
    withoutId,
  ),
  "start-rescore startRescore": makeCase(theirs, (viewer, { exerciseId }) =>
    startRescore(viewer, { exerciseId }),
  ),
  "apply-rescore applyRescore": makeCase(theirs, (viewer, { rescoreId }) =>
    applyRescore(viewer, { rescoreId }),
  ),
  "discard-rescore discardRescore": makeCase(theirs, (viewer, { rescoreId }) =>
    discardRescore(viewer, { rescoreId }),
  ),
  "get-program-report getProgramReport": makeCase(director, getProgramReport, withoutId),
  "get-section-report getSectionReport": makeCase(theirs, (viewer, { sectionId }) =>
    getSectionReport(viewer, { sectionId }),
  ),
  "export-gradebook exportGradebook": makeCase(theirs, (viewer, { sectionId }) =>
    exportGradebook(viewer, sectionId),
  ),
  "export-items exportItems": makeCase(theirs, (viewer, { sectionId }) => exportItems(viewer, sectionId)),
  // A student's own; to staff it is a student of the first section.
  "get-progress getProgress": makeCase(["ok", "ok", no, "ok", no, no], (viewer, { ada, sectionId }) =>
    getProgress(viewer, {
      studentId: ada.userId,
      ...(viewer.role === "student" ? {} : { sectionId }),
    }),
  ),
};
