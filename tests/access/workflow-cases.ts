/** Every exported function of lib/workflows: who may call it, or why it takes no viewer. */
import type { AccessCase } from "@/tests/access/access-case";
import { EXERCISE_WORKFLOWS } from "@/tests/access/workflows/exercise";
import { PEOPLE_WORKFLOWS } from "@/tests/access/workflows/people";
import { SITTING_WORKFLOWS } from "@/tests/access/workflows/sitting";
import { STONE_WORKFLOWS } from "@/tests/access/workflows/stone";

export const WORKFLOW_CASES: Readonly<Record<string, AccessCase>> = {
  ...PEOPLE_WORKFLOWS,
  ...EXERCISE_WORKFLOWS,
  ...SITTING_WORKFLOWS,
  ...STONE_WORKFLOWS,
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
