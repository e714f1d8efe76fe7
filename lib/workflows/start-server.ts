import { isAppError } from "@/lib/base/app-error";
import { applyMigrations } from "@/lib/data/apply-migrations";
import { closeStreams } from "@/lib/data/open-streams";
import { readEnvironment } from "@/lib/data/read-environment";
import { handInOverdue } from "@/lib/workflows/hand-in-overdue";
import { notePeers } from "@/lib/workflows/note-peers";
import { releaseDue } from "@/lib/workflows/release-due";
import { resumeRescores } from "@/lib/workflows/resume-rescores";
import { scorePending } from "@/lib/workflows/score-pending";

/** Between two looks for stones whose time ran out, ms. */
const SWEEP_MS = 5000;

/** Between two looks for debriefs that open by themselves, ms. */
const RELEASE_MS = 30_000;

/** Opens, for as long as the process lives, the debriefs whose moment has come. */
function sweepReleases(): void {
  const sweep = () =>
    releaseDue()
      .catch((thrown: unknown) => console.error("the sweep of debriefs failed", thrown))
      .then(() => void setTimeout(sweep, RELEASE_MS).unref());
  void sweep();
}

/** Hands in, for as long as the process lives, what ran out of time with no browser left to do it. */
function sweepOverdue(): void {
  const sweep = () =>
    handInOverdue()
      .catch((thrown: unknown) => console.error("the sweep of timed stones failed", thrown))
      .then(() => void setTimeout(sweep, SWEEP_MS).unref());
  void sweep();
}

/** Requests under way have this long to be answered once the server is told to stop, ms. */
const STOP_MS = 5000;

/**
 * Ends the streams; then the server stops by itself when the last connection is closed. Browsers keep theirs for longer than
 * anybody waits, so it ends then in any case: what was acknowledged is on disk.
 */
function stop(): void {
  closeStreams();
  setTimeout(() => process.exit(0), STOP_MS).unref();
}

/**
 * What a server does before it answers: checks its environment, brings the database up to date, and begins to score
 * what an earlier end cut off, rescores among it; from then on it hands in what runs out of time and opens debriefs whose moment has come. Where that cannot be, it says why in a sentence and ends the process.
 */
export async function startServer(): Promise<void> {
  try {
    const { databaseUrl } = readEnvironment();
    await applyMigrations(databaseUrl);
  } catch (thrown) {
    console.error(isAppError(thrown) ? thrown.message : thrown);
    process.exit(1);
  }
  notePeers();
  // The server stops once every answer is given, and a stream's answer has no end of its own.
  for (const signal of ["SIGTERM", "SIGINT"] as const) process.once(signal, stop);
  sweepOverdue();
  sweepReleases();
  scorePending()
    .catch((thrown: unknown) => console.error("the sweep of hand-ins failed", thrown))
    .then(resumeRescores)
    .catch((thrown: unknown) => console.error("a rescore could not be gone on with", thrown));
}
