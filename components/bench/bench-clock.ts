/**
 * The server's clock, as far as a browser can tell: the moment when the page was read, carried on by the browser's
 * steady clock, and set again by the `Date` of each answer. A browser's own wall clock is never trusted.
 */

/** A `Date` header holds whole seconds, and an answer takes its time: less than this is no drift. */
const DRIFT_MS = 2500;

export interface BenchClock {
  /** The server's time, ms since 1970. */
  readonly nowMs: () => number;
  /**
   * Milliseconds since the sitting opened. Never less than given before, and never slower than the steady clock: a
   * server whose clock is set back must not make every mark bear the same moment.
   */
  readonly sinceOpenedMs: () => number;
  /** Sets the clock by what the server just said, if it has drifted. */
  readonly heed: (serverMs: number) => void;
  /** Nothing is given that lies before this moment of the sitting, ms: the log has come so far. */
  readonly startFrom: (sinceOpenedMs: number) => void;
}

/**
 * A clock for a sitting. `steadyMs` is the browser's steady clock, `performance.now`; it may stand still while the
 * computer sleeps, and the server's word makes up for that.
 */
export function createBenchClock(openedAt: string, readAt: string, steadyMs: () => number): BenchClock {
  const openedMs = Date.parse(openedAt);
  let offsetMs = Date.parse(readAt) - steadyMs();
  let latest = { sinceMs: 0, steadyMs: steadyMs() };
  const nowMs = () => offsetMs + steadyMs();
  return {
    nowMs,
    sinceOpenedMs: () => {
      const steady = steadyMs();
      const carriedOn = latest.sinceMs + Math.max(0, steady - latest.steadyMs);
      latest = { sinceMs: Math.max(carriedOn, nowMs() - openedMs), steadyMs: steady };
      return Math.round(latest.sinceMs);
    },
    heed: (serverMs) => {
      if (Number.isFinite(serverMs) && Math.abs(serverMs - nowMs()) > DRIFT_MS) {
        offsetMs = serverMs - steadyMs();
      }
    },
    startFrom: (sinceOpenedMs) => {
      if (sinceOpenedMs > latest.sinceMs) latest = { sinceMs: sinceOpenedMs, steadyMs: steadyMs() };
    },
  };
}
