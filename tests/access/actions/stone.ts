/** Actions on trays and stones. */
import * as stones from "@/app/(staff)/trays/[trayId]/stones/actions";
import * as trays from "@/app/(staff)/trays/actions";
import * as out from "@/app/(staff)/trays/out/actions";
import * as check from "@/app/(student)/check/actions";
import { toStoneCode } from "@/lib/plot/stone-code";
import { planExerciseSetImport } from "@/lib/workflows/plan-exercise-set-import";
import type { ActionCase } from "@/tests/access/action-case";
import { staff, theirs } from "@/tests/access/action-case";
import { makeSampleSet } from "@/tests/support/sample-set";
import { READING, REFERENCE, SEEN } from "@/tests/support/school-marks";

const body = { cut: "round-brilliant", proportions: {} };
const tray = { name: "New", notes: "" };

export const STONE_ACTIONS: Readonly<Record<string, ActionCase>> = {
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
};
