/** Every exported function of lib/data: who may call it, or why it takes no viewer. */
import { exportExerciseSet } from "@/lib/data/export-exercise-set";
import { exportPersonData } from "@/lib/data/export-person-data";
import { exportPlots } from "@/lib/data/export-plots";
import { exportTraySet } from "@/lib/data/export-tray-set";
import { findMyScannedStone } from "@/lib/data/find-my-scanned-stone";
import { followMyNotes } from "@/lib/data/follow-my-notes";
import { followWatch, type WatchWord } from "@/lib/data/follow-watch";
import { getBench } from "@/lib/data/get-bench";
import { getBenchWatch } from "@/lib/data/get-bench-watch";
import { getDebrief } from "@/lib/data/get-debrief";
import { getOverview } from "@/lib/data/get-overview";
import { getPhotoFile } from "@/lib/data/get-photo-file";
import { getProgramSettings } from "@/lib/data/get-program-settings";
import { getReferenceVersion } from "@/lib/data/get-reference-version";
import { getRescore } from "@/lib/data/get-rescore";
import { getReview } from "@/lib/data/get-review";
import { getReviewGrid } from "@/lib/data/get-review-grid";
import { getRubricBench } from "@/lib/data/get-rubric-bench";
import { getRubricDefaults } from "@/lib/data/get-rubric-defaults";
import { getScannedStone } from "@/lib/data/get-scanned-stone";
import { getStone } from "@/lib/data/get-stone";
import { getStoneToCheck } from "@/lib/data/get-stone-to-check";
import { getTray } from "@/lib/data/get-tray";
import { getTrayWorksheets } from "@/lib/data/get-tray-worksheets";
import { getWorksheets } from "@/lib/data/get-worksheets";
import { listBlindReadings } from "@/lib/data/list-blind-readings";
import { listExercises } from "@/lib/data/list-exercises";
import { listHolders } from "@/lib/data/list-holders";
import { listMyExercises } from "@/lib/data/list-my-exercises";
import { listMyNotes } from "@/lib/data/list-my-notes";
import { listOut } from "@/lib/data/list-out";
import { listPeople } from "@/lib/data/list-people";
import { listSecondReadings } from "@/lib/data/list-second-readings";
import { listSections } from "@/lib/data/list-sections";
import { listShownPhotos } from "@/lib/data/list-shown-photos";
import { listStoneChecks } from "@/lib/data/list-stone-checks";
import { listTouchedExercises } from "@/lib/data/list-touched-exercises";
import { listTrail } from "@/lib/data/list-trail";
import { listTrays } from "@/lib/data/list-trays";
import { listWatch } from "@/lib/data/list-watch";
import { previewBench, previewMyExercise } from "@/lib/data/preview-exercise";
import { toStoneCode } from "@/lib/plot/stone-code";
import { type AccessCase, makeCase } from "@/tests/access/access-case";

const no = "not-found";
const staff = ["ok", "ok", "ok", no, no, no] as const;
/** The exercise, or a sitting of it, is the first section's: the other instructor is told that there is none. */
const teaching = ["ok", "ok", no, no, no, no] as const;
const director = ["ok", "not-allowed", "not-allowed", no, no, no] as const;
const owner = ["not-allowed", "not-allowed", "not-allowed", "ok", no, no] as const;
const lists = { byId: false };

export const DATA_CASES: Readonly<Record<string, AccessCase>> = {
  "list-my-exercises listMyExercises": makeCase(
    ["not-allowed", "not-allowed", "not-allowed", "ok", "ok", "ok"],
    (viewer) => listMyExercises(viewer),
    lists,
  ),
  "get-bench getBench": makeCase(owner, (viewer, { adaOnBench }) => getBench(viewer, adaOnBench)),
  // Scored and not released: its student is told that there is none.
  "get-debrief getDebrief": makeCase(teaching, (viewer, { adaScored }) => getDebrief(viewer, adaScored)),
  "preview-exercise previewMyExercise": makeCase(teaching, (viewer, { exerciseId }) =>
    previewMyExercise(viewer, exerciseId),
  ),
  "preview-exercise previewBench": makeCase(teaching, (viewer, { exerciseId, exerciseStoneIds }) =>
    previewBench(viewer, exerciseId, exerciseStoneIds[0]),
  ),
  "get-review getReview": makeCase(teaching, (viewer, { adaScored }) => getReview(viewer, adaScored)),
  "list-trays listTrays": makeCase(staff, (viewer) => listTrays(viewer), lists),
  "get-tray getTray": makeCase(staff, (viewer, { trayId }) => getTray(viewer, trayId)),
  "get-stone getStone": makeCase(staff, (viewer, { stoneIds }) => getStone(viewer, stoneIds[0])),
  "get-reference-version getReferenceVersion": makeCase(staff, (viewer, { stoneIds }) =>
    getReferenceVersion(viewer, stoneIds[0], 1),
  ),
  "list-out listOut": makeCase(staff, (viewer) => listOut(viewer), lists),
  "list-holders listHolders": makeCase(staff, (viewer) => listHolders(viewer), lists),
  "list-stone-checks listStoneChecks": makeCase(staff, (viewer, { trayId }) =>
    listStoneChecks(viewer, trayId),
  ),
  "get-scanned-stone getScannedStone": makeCase(staff, (viewer, { stoneIds }) =>
    getScannedStone(viewer, toStoneCode(stoneIds[0])),
  ),
  // A student is told of a label only whether it is theirs: where it is not, as where there is none, nothing.
  "find-my-scanned-stone findMyScannedStone": makeCase(
    ["not-allowed", "not-allowed", "not-allowed", "ok", "ok", "ok"],
    (viewer, { stoneIds }) => findMyScannedStone(viewer, toStoneCode(stoneIds[0])),
    lists,
  ),
  // The photograph is not shown: students are told that there is none.
  "get-photo-file getPhotoFile": makeCase(staff, (viewer, { photoId }) =>
    getPhotoFile(viewer, photoId, "small"),
  ),
  "list-shown-photos listShownPhotos": makeCase(owner, (viewer, { adaOnBench }) =>
    listShownPhotos(viewer, adaOnBench),
  ),
  "get-stone-to-check getStoneToCheck": makeCase(
    ["not-allowed", "not-allowed", "not-allowed", "ok", "ok", no],
    (viewer, { exerciseStoneIds }) => getStoneToCheck(viewer, exerciseStoneIds[0]),
  ),
  "get-worksheets getWorksheets": makeCase(["ok", "ok", no, "ok", "ok", no], (viewer, { exerciseId }) =>
    getWorksheets(viewer, exerciseId),
  ),
  "get-tray-worksheets getTrayWorksheets": makeCase(staff, (viewer, { trayId }) =>
    getTrayWorksheets(viewer, trayId),
  ),
  "list-sections listSections": makeCase(staff, (viewer) => listSections(viewer), lists),
  "list-exercises listExercises": makeCase(staff, (viewer) => listExercises(viewer), lists),
  "get-review-grid getReviewGrid": makeCase(teaching, (viewer, { exerciseId }) =>
    getReviewGrid(viewer, exerciseId),
  ),
  "get-rescore getRescore": makeCase(teaching, (viewer, { exerciseId }) => getRescore(viewer, exerciseId)),
  "get-rubric-bench getRubricBench": makeCase(teaching, (viewer, { exerciseId }) =>
    getRubricBench(viewer, exerciseId),
  ),
  "list-touched-exercises listTouchedExercises": makeCase(staff, (viewer, { stoneIds }) =>
    listTouchedExercises(viewer, stoneIds[0]),
  ),
  "list-blind-readings listBlindReadings": makeCase(staff, listBlindReadings, lists),
  "list-second-readings listSecondReadings": makeCase(staff, (viewer, { stoneIds }) =>
    listSecondReadings(viewer, stoneIds[0]),
  ),
  "get-bench-watch getBenchWatch": makeCase(teaching, (viewer, { adaOnBench }) =>
    getBenchWatch(viewer, adaOnBench),
  ),
  "list-watch listWatch": makeCase(staff, (viewer) => listWatch(viewer), lists),
  "follow-watch followWatch": makeCase(
    staff,
    async (viewer) => {
      const words: WatchWord[] = [];
      const { end } = await followWatch(viewer, (word) => words.push(word));
      end();
      return words;
    },
    lists,
  ),
  "list-my-notes listMyNotes": makeCase(owner, (viewer, { adaOnBench }) => listMyNotes(viewer, adaOnBench)),
  "follow-my-notes followMyNotes": makeCase(owner, async (viewer, { adaOnBench }) => {
    const heard: unknown[] = [];
    const end = await followMyNotes(viewer, adaOnBench, (notes) => heard.push(notes));
    end();
    return heard;
  }),
  "get-overview getOverview": makeCase(staff, (viewer) => getOverview(viewer), lists),
  "get-program-settings getProgramSettings": makeCase(director, getProgramSettings, lists),
  "get-rubric-defaults getRubricDefaults": makeCase(staff, getRubricDefaults, lists),
  "list-people listPeople": makeCase(director, (viewer) => listPeople(viewer), lists),
  "list-trail listTrail": makeCase(director, (viewer) => listTrail(viewer, { page: 1 }), lists),
  "export-exercise-set exportExerciseSet": makeCase(teaching, (viewer, { exerciseId }) =>
    exportExerciseSet(viewer, exerciseId),
  ),
  // Otto reads a stone of it blind.
  "export-tray-set exportTraySet": makeCase(["ok", "ok", "reading-blind", no, no, no], (viewer, { trayId }) =>
    exportTraySet(viewer, trayId),
  ),
  // Ada's: she herself and a director.
  "export-person-data exportPersonData": makeCase(["ok", no, no, "ok", no, no], (viewer, { ada }) =>
    exportPersonData(viewer, ada.userId),
  ),
  "export-plots exportPlots": makeCase(teaching, (viewer, { exerciseId }) => exportPlots(viewer, exerciseId)),
};

/** Functions that take no viewer, and why that gives nothing away. */
export const DATA_WITHOUT_VIEWER: Readonly<Record<string, string>> = {
  "apply-migrations applyMigrations": "set-up and start, before anybody is there",
  "apply-migrations listMigrations": "reads the project's own files",
  "find-viewer findViewer": "makes the viewer, from a session that was checked",
  "has-any-user hasAnyUser": "the first start: says only whether there is an account",
  "open-streams closeStreams": "the server's own end; gives back nothing",
  "open-streams keepStream": "keeps what ends an answer that was allowed already",
  "read-environment readEnvironment": "reads the process's environment",
  "require-viewer findSignedInViewer": "makes the viewer, from the request's session",
  "require-viewer requireLastingViewer": "makes the viewer, from the request's session",
  "require-viewer requireViewer": "makes the viewer, from the request's session",
  "session-cookie getSessionCookie": "a cookie's name",
};
