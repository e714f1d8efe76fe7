/** Workflows on sittings: the bench, the review and the release. */
import { acceptStray } from "@/lib/workflows/accept-stray";
import { claimBench } from "@/lib/workflows/claim-bench";
import { deleteComment } from "@/lib/workflows/delete-comment";
import { handIn } from "@/lib/workflows/hand-in";
import { noteBench } from "@/lib/workflows/note-bench";
import { openSitting } from "@/lib/workflows/open-sitting";
import { overrule } from "@/lib/workflows/overrule";
import { releaseDebriefs } from "@/lib/workflows/release-debriefs";
import { saveEvents } from "@/lib/workflows/save-events";
import { seeNote } from "@/lib/workflows/see-note";
import { sendNotes } from "@/lib/workflows/send-notes";
import { undoOverrule } from "@/lib/workflows/undo-overrule";
import { withdrawRelease } from "@/lib/workflows/withdraw-release";
import { writeComment } from "@/lib/workflows/write-comment";
import { type AccessCase, makeCase } from "@/tests/access/access-case";
import { no, owner, theirs } from "@/tests/access/outcomes";
import { WRITER } from "@/tests/support/school";
import { makeMark } from "@/tests/support/school-marks";

const GRADE_RULING = { kind: "grade" as const, property: "colour" as const, credit: 1 };
const STRAY_IN = {
  markId: "m1",
  baseVersion: 1,
  extent: { kind: "as-drawn" as const },
  as: { kind: "mark" as const, characteristic: "crystal", optional: true },
};

export const SITTING_WORKFLOWS: Readonly<Record<string, AccessCase>> = {
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
