/**
 * The server's clock, as far as a browser can tell: the moment when the page was read, carried on by the browser's
 * steady clock, and set again by the `Date` of each answer. A browser's own wall clock is never trusted.
 */

/** A `Date` header holds whole seconds, and an answer takes its time: less than this is no drift. */
const DRIFT_MS = 2500;

export interface BenchClock {
  /** The server's time, ms since 1970. */
  readonly nowMs: () => number;
  /** Milliseconds since the sitting opened, never less than given before. */
  readonly sinceOpenedMs: () => number;
  /** Sets the clock by what the server just said, if it has drifted. */
  readonly heed: (serverMs: number) => void;
}

/** A clock for a sitting. `steadyMs` is the browser's steady clock, `performance.now`. */
export function createBenchClock(openedAt: string, readAt: string, steadyMs: () => number): BenchClock {
  const openedMs = Date.parse(openedAt);
  let offsetMs = Date.parse(readAt) - steadyMs();
  let latestMs = 0;
  const nowMs = () => offsetMs + steadyMs();
  return {
    nowMs,
    sinceOpenedMs: () => {
      latestMs = Math.max(latestMs, Math.round(nowMs() - openedMs));
      return latestMs;
    },
    heed: (serverMs) => {
      if (Number.isFinite(serverMs) && Math.abs(serverMs - nowMs()) > DRIFT_MS) {
        offsetMs = serverMs - steadyMs();
      }
    },
  };
}
