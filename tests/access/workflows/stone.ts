/** Workflows on trays and stones. */
import { addPhoto } from "@/lib/workflows/add-photo";
import { checkStone } from "@/lib/workflows/check-stone";
import { createStone } from "@/lib/workflows/create-stone";
import { createTray } from "@/lib/workflows/create-tray";
import { deletePhoto } from "@/lib/workflows/delete-photo";
import { dismissSuggestion } from "@/lib/workflows/dismiss-suggestion";
import { getSecondReading } from "@/lib/workflows/get-second-reading";
import { getStoneEvidence } from "@/lib/workflows/get-stone-evidence";
import { giveUpSecondReading } from "@/lib/workflows/give-up-second-reading";
import { handInSecondReading } from "@/lib/workflows/hand-in-second-reading";
import { handOutStones } from "@/lib/workflows/hand-out-stones";
import { importExerciseSet } from "@/lib/workflows/import-exercise-set";
import { listLibrarySets } from "@/lib/workflows/list-library-sets";
import { orderPhotos } from "@/lib/workflows/order-photos";
import { planExerciseSetImport } from "@/lib/workflows/plan-exercise-set-import";
import { saveReference } from "@/lib/workflows/save-reference";
import { saveSecondReading } from "@/lib/workflows/save-second-reading";
import { sendStoneCheck } from "@/lib/workflows/send-stone-check";
import { settleSecondReading } from "@/lib/workflows/settle-second-reading";
import { settleStoneCheck } from "@/lib/workflows/settle-stone-check";
import { startSecondReading } from "@/lib/workflows/start-second-reading";
import { takeBackStones } from "@/lib/workflows/take-back-stones";
import { updatePhoto } from "@/lib/workflows/update-photo";
import { updateStone } from "@/lib/workflows/update-stone";
import { updateTray } from "@/lib/workflows/update-tray";
import { type AccessCase, makeCase } from "@/tests/access/access-case";
import { no, reader, staff, theirs, withoutId } from "@/tests/access/outcomes";
import { makePicture } from "@/tests/support/make-picture";
import { makeSampleSet } from "@/tests/support/sample-set";
import { READING, REFERENCE, SEEN } from "@/tests/support/school-marks";

const body = { cut: "round-brilliant" as const, proportions: {} };

export const STONE_WORKFLOWS: Readonly<Record<string, AccessCase>> = {
  "list-library-sets listLibrarySets": makeCase(staff, async (viewer) => listLibrarySets(viewer), withoutId),
  "plan-exercise-set-import planExerciseSetImport": makeCase(theirs, (viewer, { trayId }) =>
    planExerciseSetImport(viewer, { json: makeSampleSet(), trayId, trayName: "New" }),
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
};
