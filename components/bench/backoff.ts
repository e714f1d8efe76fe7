/** Waits that grow while something keeps failing, and that can be cut short. */

const FIRST_WAIT_MS = 500;
const LONGEST_WAIT_MS = 15_000;

export class Backoff {
  private failures = 0;
  private end: (() => void) | null = null;

  /** Resolves after the next wait, or as soon as it is cut short. */
  readonly wait = (): Promise<void> => {
    const waitMs = Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** this.failures);
    this.failures += 1;
    return new Promise((resolve) => {
      const end = () => {
        clearTimeout(timer);
        this.end = null;
        resolve();
      };
      const timer = setTimeout(end, waitMs);
      this.end = end;
    });
  };

  /** Ends the wait under way, if there is one. */
  readonly cutShort = (): void => this.end?.();

  /** The next wait is the shortest again. */
  readonly reset = (): void => {
    this.failures = 0;
  };
}
