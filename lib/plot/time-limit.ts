/** How long a stone may take, and what comes in after the end. All by the server's clock; pure. */

/** What was done before the end and is on its way is still taken for this long after it, ms: a lost network comes back. */
export const GRACE_MS = 30_000;

/** A bench knows the server's clock this well, ms: a step timed so little after the end was made at the end. */
const CLOCK_SLACK_MS = 5000;

const MINUTE_MS = 60_000;

/** When a stone opened now runs out: its minutes later, or when the exercise closes if that comes first. */
export function toEndsAt(openedAt: Date, minutes: number, closesAt: Date | null): Date {
  const ends = openedAt.getTime() + minutes * MINUTE_MS;
  return new Date(closesAt === null ? ends : Math.min(ends, closesAt.getTime()));
}

/** What a sitting's time hangs on. */
export interface TimedSitting {
  readonly openedAt: Date;
  readonly endsAt: Date | null;
  /** The time given from opening to end. */
  readonly limitMs: number | null;
}

/** True once the time has run out; never without a limit. */
export function isTimeOver({ endsAt }: Pick<TimedSitting, "endsAt">, nowMs: number): boolean {
  return endsAt !== null && nowMs >= endsAt.getTime();
}

/** True once nothing that comes in is taken any more. */
export function isGraceOver({ endsAt }: Pick<TimedSitting, "endsAt">, nowMs: number): boolean {
  return endsAt !== null && nowMs >= endsAt.getTime() + GRACE_MS;
}

/**
 * Whether a step of the bench was made before the end. `atMs` counts from the opening; where the server's clock was set
 * meanwhile, a bench may have leapt with it or not, and the longer of the two times holds.
 */
export function isMadeInTime({ openedAt, endsAt, limitMs }: TimedSitting, atMs: number): boolean {
  if (endsAt === null) return true;
  const wholeMs = Math.max(limitMs ?? 0, endsAt.getTime() - openedAt.getTime());
  return atMs <= wholeMs + CLOCK_SLACK_MS;
}
