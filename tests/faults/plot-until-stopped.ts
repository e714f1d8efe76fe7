/**
 * A student's bench as the server sees it: batches of steps over HTTP, the next once the last is acknowledged; an
 * answer that did not come means that the very same batch is sent again, as the browser does after a crash.
 */
import type { SittingEvent } from "@/lib/plot/sitting-event";
import type { Plotter } from "@/tests/faults/trial";

const BATCH = 3;
const WRITER = "writer-of-the-faults";

/** What one student has sent and heard; carried on from one life of the server to the next. */
export interface Progress {
  readonly plotter: Plotter;
  /** Everything up to here was acknowledged. */
  acknowledged: number;
  /** Answers that refused, by their code. */
  readonly refusals: Map<string, number>;
}

export const createProgress = (plotter: Plotter): Progress => ({
  plotter,
  acknowledged: 0,
  refusals: new Map(),
});

/** The step at a place of the log: always the same for the same place, each with a mark of its own. */
export function makeStep(seq: number): SittingEvent {
  return {
    seq,
    atMs: seq * 100,
    kind: "marks",
    put: [
      {
        id: `m${seq}`,
        view: seq % 2 === 0 ? "crown" : "pavilion",
        characteristic: "pinpoint",
        shape: { kind: "dot", at: [(seq % 400) / 1000, 0.1] },
        atMs: seq * 100,
      },
    ],
    removed: seq > 40 ? [`m${seq - 40}`] : [],
  };
}

/** Sends one batch; true when it was acknowledged, null when no answer came. */
export async function sendBatch(address: string, progress: Progress): Promise<boolean | null> {
  const { plotter, acknowledged } = progress;
  const events = Array.from({ length: BATCH }, (_, index) => makeStep(acknowledged + 1 + index));
  try {
    const response = await fetch(`${address}/api/sittings/${plotter.sittingId}/events`, {
      method: "POST",
      headers: { "content-type": "application/json", cookie: plotter.cookie, origin: address },
      body: JSON.stringify({ writerId: WRITER, events }),
    });
    const said = (await response.json()) as { lastSeq?: number; code?: string };
    if (response.ok && typeof said.lastSeq === "number") {
      progress.acknowledged = said.lastSeq;
      return true;
    }
    const code = `${response.status} ${said.code ?? "?"}`;
    progress.refusals.set(code, (progress.refusals.get(code) ?? 0) + 1);
    return false;
  } catch {
    return null;
  }
}

/** Plots until no answer comes, a save is refused, or `isStopped` says so. */
export async function plotUntilStopped(
  address: string,
  progress: Progress,
  isStopped: () => boolean,
): Promise<void> {
  while (!isStopped()) {
    if ((await sendBatch(address, progress)) !== true) return;
  }
}
