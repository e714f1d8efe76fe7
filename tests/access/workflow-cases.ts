/** Every exported function of lib/workflows: who may call it, or why it takes no viewer. */
import { DEFAULT_RUBRIC } from "@/lib/plot/rubric";
import { acceptStray } from "@/lib/workflows/accept-stray";
import { addPhoto } from "@/lib/workflows/add-photo";
import { applyRescore } from "@/lib/workflows/apply-rescore";
import { checkStone } from "@/lib/workflows/check-stone";
import { claimBench } from "@/lib/workflows/claim-bench";
import { createAccessLinks } from "@/lib/workflows/create-access-links";
import { createExercise } from "@/lib/workflows/create-exercise";
import { createPerson } from "@/lib/workflows/create-person";
import { createSection } from "@/lib/workflows/create-section";
import { createStone } from "@/lib/workflows/create-stone";
import { createTray } from "@/lib/workflows/create-tray";
import { deleteComment } from "@/lib/workflows/delete-comment";
import { deletePhoto } from "@/lib/workflows/delete-photo";
import { discardRescore } from "@/lib/workflows/discard-rescore";
import { dismissSuggestion } from "@/lib/workflows/dismiss-suggestion";
import { duplicateExercise } from "@/lib/workflows/duplicate-exercise";
import { enrolStudents } from "@/lib/workflows/enrol-students";
import { erasePerson } from "@/lib/workflows/erase-person";
import { exportGradebook } from "@/lib/workflows/export-gradebook";
import { exportItems } from "@/lib/workflows/export-items";
import { getProgramReport } from "@/lib/workflows/get-program-report";
import { getProgress } from "@/lib/workflows/get-progress";
import { getSecondReading } from "@/lib/workflows/get-second-reading";
import { getSectionReport } from "@/lib/workflows/get-section-report";
import { getStoneEvidence } from "@/lib/workflows/get-stone-evidence";
import { giveUpSecondReading } from "@/lib/workflows/give-up-second-reading";
import { grantExtension } from "@/lib/workflows/grant-extension";
import { grantExtraTime } from "@/lib/workflows/grant-extra-time";
import { grantRetake } from "@/lib/workflows/grant-retake";
import { handIn } from "@/lib/workflows/hand-in";
import { handInSecondReading } from "@/lib/workflows/hand-in-second-reading";
import { handOutStones } from "@/lib/workflows/hand-out-stones";
import { importExerciseSet } from "@/lib/workflows/import-exercise-set";
import { importRoster } from "@/lib/workflows/import-roster";
import { listLibrarySets } from "@/lib/workflows/list-library-sets";
import { listRetakeStones } from "@/lib/workflows/list-retake-stones";
import { noteBench } from "@/lib/workflows/note-bench";
import { openSitting } from "@/lib/workflows/open-sitting";
import { orderPhotos } from "@/lib/workflows/order-photos";
import { overrule } from "@/lib/workflows/overrule";
import { planExerciseSetImport } from "@/lib/workflows/plan-exercise-set-import";
import { planRosterImport } from "@/lib/workflows/plan-roster-import";
import { releaseDebriefs } from "@/lib/workflows/release-debriefs";
import { resetPassword } from "@/lib/workflows/reset-password";
import { saveEvents } from "@/lib/workflows/save-events";
import { saveReference } from "@/lib/workflows/save-reference";
import { saveRubric } from "@/lib/workflows/save-rubric";
import { saveSecondReading } from "@/lib/workflows/save-second-reading";
import { seeNote } from "@/lib/workflows/see-note";
import { sendNotes } from "@/lib/workflows/send-notes";
import { sendStoneCheck } from "@/lib/workflows/send-stone-check";
import { setPassword } from "@/lib/workflows/set-password";
import { setPersonActive } from "@/lib/workflows/set-person-active";
import { settleSecondReading } from "@/lib/workflows/settle-second-reading";
import { settleStoneCheck } from "@/lib/workflows/settle-stone-check";
import { startRescore } from "@/lib/workflows/start-rescore";
import { startSecondReading } from "@/lib/workflows/start-second-reading";
import { takeBackStones } from "@/lib/workflows/take-back-stones";
import { undoOverrule } from "@/lib/workflows/undo-overrule";
import { updateExercise } from "@/lib/workflows/update-exercise";
import { updatePhoto } from "@/lib/workflows/update-photo";
import { updateStone } from "@/lib/workflows/update-stone";
import { updateTray } from "@/lib/workflows/update-tray";
import { withdrawRelease } from "@/lib/workflows/withdraw-release";
import { writeComment } from "@/lib/workflows/write-comment";
import { type AccessCase, makeCase } from "@/tests/access/access-case";
import { makePicture } from "@/tests/support/make-picture";
import { makeSampleSet } from "@/tests/support/sample-set";
import { makeMark, makeOpenDates, PASSWORD, READING, REFERENCE, SEEN, WRITER } from "@/tests/support/school";

const no = "not-found";
const staff = ["ok", "ok", "ok", no, no, no] as const;
/** The tray is the first instructor's own, the section and its sittings are taught by the same one. */
const theirs = ["ok", "ok", no, no, no, no] as const;
const director = ["ok", "not-allowed", "not-allowed", no, no, no] as const;
/** The reading is Otto's own. */
const reader = [no, no, "ok", no, no, no] as const;
const owner = ["not-allowed", "not-allowed", "not-allowed", "ok", no, no] as const;
const body = { cut: "round-brilliant" as const, proportions: {} };
const exercise = { title: "Another", notes: "", rules: { preparation: "asked" as const, schoolRules: "" } };
const withoutId = { byId: false };

const roster = {
  files: [{ name: "roster.csv", bytes: new TextEncoder().encode("login,name\nnewcomer,New Comer\n") }],
  termOfNew: "",
};

const GRADE_RULING = { kind: "grade" as const, property: "colour" as const, credit: 1 };
const STRAY_IN = {
  markId: "m1",
  baseVersion: 1,
  extent: { kind: "as-drawn" as const },
  as: { kind: "mark" as const, characteristic: "crystal", optional: true },
};

export const WORKFLOW_CASES: Readonly<Record<string, AccessCase>> = {
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
  "list-library-sets listLibrarySets": makeCase(staff, async (viewer) => listLibrarySets(viewer), withoutId),
  "plan-exercise-set-import planExerciseSetImport": makeCase(theirs, (viewer, { trayId }) =>
    planExerciseSetImport(viewer, { json: makeSampleSet(), trayId, trayName: "New" }),
  ),
  "duplicate-exercise duplicateExercise": makeCase(theirs, (viewer, { exerciseId, sectionId }) =>
    duplicateExercise(viewer, { exerciseId, sectionId, title: "Again", opensAt: "2027-02-01T08:00:00Z" }),
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
  "create-tray createTray": makeCase(
    staff,
    (viewer) => createTray(viewer, { name: "New", notes: "" }),
    withoutId,
  ),
  "update-tray updateTray": makeCase(theirs, (viewer, { trayId }) =>
    updateTray(viewer, { trayId, name: "Renamed", notes: "" }),
  ),
  "create-stone createStone": makeCase(theirs, (viewer, { trayId }) =>
    createStone(viewer, { trayId, label: "T-9", body }),
  ),
  "update-stone updateStone": makeCase(theirs, (viewer, { stoneIds }) =>
    updateStone(viewer, { stoneId: stoneIds[0], revision: 1, label: "T-1", body }),
  ),
  "save-reference saveReference": makeCase(theirs, (viewer, { stoneIds }) =>
    saveReference(viewer, { stoneId: stoneIds[0], baseVersion: 1, reference: REFERENCE, note: "" }),
  ),
  "get-stone-evidence getStoneEvidence": makeCase(staff, (viewer, { stoneIds }) =>
    getStoneEvidence(viewer, stoneIds[0]),
  ),
  // The school's few hand-ins suggest nothing, which whoever may dismiss is told; the others are told that there is no stone.
  "dismiss-suggestion dismissSuggestion": makeCase(
    ["conflict", "conflict", no, no, no, no],
    (viewer, { stoneIds }) => dismissSuggestion(viewer, { stoneId: stoneIds[0], key: "crown:0.000:0.000" }),
    withoutId,
  ),
  // Iris wrote the reference: she is told why she cannot be its second reader.
  "start-second-reading startSecondReading": makeCase(
    ["ok", "conflict", "ok", no, no, no],
    (viewer, { stoneIds }) => startSecondReading(viewer, { stoneId: stoneIds[1] }),
    withoutId,
  ),
  "save-second-reading saveSecondReading": makeCase(reader, (viewer, { openReadingId }) =>
    saveSecondReading(viewer, { readingId: openReadingId, revision: 2, plot: READING }),
  ),
  "hand-in-second-reading handInSecondReading": makeCase(reader, (viewer, { openReadingId }) =>
    handInSecondReading(viewer, { readingId: openReadingId, revision: 2, plot: READING }),
  ),
  "give-up-second-reading giveUpSecondReading": makeCase(reader, (viewer, { openReadingId }) =>
    giveUpSecondReading(viewer, { readingId: openReadingId }),
  ),
  "get-second-reading getSecondReading": makeCase(reader, (viewer, { openReadingId }) =>
    getSecondReading(viewer, openReadingId),
  ),
  "settle-second-reading settleSecondReading": makeCase(theirs, (viewer, { readingId }) =>
    settleSecondReading(viewer, { readingId, baseVersion: 1, choices: {}, note: "" }),
  ),
  "add-photo addPhoto": makeCase(theirs, async (viewer, { stoneIds }) =>
    addPhoto(viewer, { stoneId: stoneIds[0], bytes: await makePicture() }),
  ),
  "update-photo updatePhoto": makeCase(theirs, (viewer, { photoId }) =>
    updatePhoto(viewer, { photoId, caption: "At 6", isShown: true }),
  ),
  "order-photos orderPhotos": makeCase(theirs, (viewer, { stoneIds, photoId }) =>
    orderPhotos(viewer, { stoneId: stoneIds[0], photoIds: [photoId] }),
  ),
  "delete-photo deletePhoto": makeCase(theirs, (viewer, { photoId }) => deletePhoto(viewer, { photoId })),
  // Any staff hand a stone of any tray out, to a seat; to a student only of a section that they teach.
  "hand-out-stones handOutStones": makeCase(staff, (viewer, { stoneIds }) =>
    handOutStones(viewer, {
      stoneIds: [stoneIds[0]],
      to: { kind: "seat", seat: "Bench 4" },
      dueBackAt: null,
    }),
  ),
  "take-back-stones takeBackStones": makeCase(
    ["conflict", "conflict", "conflict", no, no, no],
    (viewer, { stoneIds }) => takeBackStones(viewer, { stoneIds: [stoneIds[0]] }),
    withoutId,
  ),
  // Otto reads a stone of the tray blind.
  "check-stone checkStone": makeCase(
    ["ok", "ok", "reading-blind", no, no, no],
    (viewer, { trayId, stoneIds }) =>
      checkStone(viewer, { trayId, stoneId: stoneIds[0], evidence: { ...SEEN, cut: "round-brilliant" } }),
  ),
  "send-stone-check sendStoneCheck": makeCase(
    ["not-allowed", "not-allowed", "not-allowed", "ok", "ok", no],
    (viewer, { exerciseStoneIds }) =>
      sendStoneCheck(viewer, { exerciseStoneId: exerciseStoneIds[0], evidence: SEEN }),
  ),
  "settle-stone-check settleStoneCheck": makeCase(staff, (viewer, { checkId }) =>
    settleStoneCheck(viewer, { checkId }),
  ),
  "import-exercise-set importExerciseSet": makeCase(theirs, (viewer, { trayId }) =>
    importExerciseSet(viewer, { json: makeSampleSet(), trayId, trayName: "New" }),
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
  // Whoever is enrolled has a sitting of their own on the stone; a stranger is told that there is no such stone.
  "open-sitting openSitting": makeCase(
    ["not-allowed", "not-allowed", "not-allowed", "ok", "ok", no],
    (viewer, { exerciseStoneIds }) => openSitting(viewer, { exerciseStoneId: exerciseStoneIds[1] }),
  ),
  "claim-bench claimBench": makeCase(owner, (viewer, { adaOnBench }) =>
    claimBench(viewer, { sittingId: adaOnBench, writerId: WRITER, takeOver: true }),
  ),
  "save-events saveEvents": makeCase(owner, (viewer, { adaOnBench }) =>
    saveEvents(viewer, {
      sittingId: adaOnBench,
      writerId: WRITER,
      events: [{ seq: 3, atMs: 9000, kind: "marks", put: [makeMark("m2", 0.1)], removed: [] }],
    }),
  ),
  "hand-in handIn": makeCase(owner, (viewer, { adaOnBench }) =>
    handIn(viewer, { sittingId: adaOnBench, writerId: WRITER, lastSeq: 2 }),
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
  // A student's own, whichever section is named; to staff it is a student of the first section.
  "get-progress getProgress": makeCase(["ok", "ok", no, "ok", no, no], (viewer, { ada, sectionId }) =>
    getProgress(viewer, { studentId: ada.userId, sectionId }),
  ),
  "overrule overrule": makeCase(theirs, (viewer, { adaScored: sittingId }) =>
    overrule(viewer, { sittingId, baseRevision: 2, ruling: GRADE_RULING, reason: "As seen at the desk." }),
  ),
  "undo-overrule undoOverrule": makeCase(theirs, (viewer, { adaScored: sittingId, overruleId }) =>
    undoOverrule(viewer, { sittingId, baseRevision: 2, overruleId }),
  ),
  "write-comment writeComment": makeCase(theirs, (viewer, { adaScored: sittingId }) =>
    writeComment(viewer, { sittingId, baseRevision: 2, commentId: null, subject: "mark:m1", text: "Look." }),
  ),
  // Iris's own: a director, who reviews as well, may not touch it.
  "delete-comment deleteComment": makeCase(
    [no, "ok", no, no, no, no],
    (viewer, { adaScored: sittingId, commentId }) =>
      deleteComment(viewer, { sittingId, baseRevision: 2, commentId }),
  ),
  "accept-stray acceptStray": makeCase(theirs, (viewer, { adaScored }) =>
    acceptStray(viewer, { ...STRAY_IN, sittingId: adaScored }),
  ),
  "release-debriefs releaseDebriefs": makeCase(theirs, (viewer, { adaScored }) =>
    releaseDebriefs(viewer, { sittingIds: [adaScored] }),
  ),
  "send-notes sendNotes": makeCase(theirs, (viewer, { adaOnBench }) =>
    sendNotes(viewer, { sittingIds: [adaOnBench], text: "Clean it and look again." }),
  ),
  "see-note seeNote": makeCase(owner, (viewer, { adaOnBench, adaNote }) =>
    seeNote(viewer, { sittingId: adaOnBench, noteId: adaNote }),
  ),
  "note-bench noteBench": makeCase(owner, (viewer, { adaOnBench }) =>
    noteBench(viewer, { sittingId: adaOnBench, presence: "here" }),
  ),
  "withdraw-release withdrawRelease": makeCase(theirs, (viewer, { benReleased }) =>
    withdrawRelease(viewer, { sittingIds: [benReleased] }),
  ),
};

/** Functions that take no viewer, and why that gives nothing away. */
export const WORKFLOWS_WITHOUT_VIEWER: Readonly<Record<string, string>> = {
  "build-auth-options buildAuthOptions": "settings of sign-in",
  "check-password checkPassword": "compares two texts",
  "create-first-director createFirstDirector": "works only while there is no account (tested below)",
  "find-client-address findClientAddress": "reads a request's headers",
  "release-due releaseDue":
    "the program's own release at the moment that an exercise says; gives back a count",
  "hand-in-overdue handInOverdue": "the program's own sweep of what ran out of time; gives back a count",
  "hash-password hashPassword": "hashes a text",
  "judge-stone-checks judgeStoneChecks": "the program's own step after a check was sent; gives back a count",
  "hash-token hashToken": "hashes a text",
  "load-demo loadDemo": "set-up, before anybody is there; works only on an empty database",
  "note-peers notePeers": "notes the connection's other end",
  "redeem-access-link readAccessLink": "the token is what lets in (tests/integration/access-links.test.ts)",
  "redeem-access-link redeemAccessLink": "the token is what lets in (tests/integration/access-links.test.ts)",
  "resume-rescores resumeRescores": "start, before anybody is there; gives back a count",
  "run-rescore runRescore": "the program's own step after a rescore was begun; gives back nothing",
  "score-hand-in scoreHandIn": "the program's own step after a hand-in; gives back whether it wrote",
  "score-pending scorePending": "the program's own sweep; gives back two counts",
  "sign-in signIn": "makes the session that a viewer comes from",
  "start-server startServer": "start, before anybody is there",
};
