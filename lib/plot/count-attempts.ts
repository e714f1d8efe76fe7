/** Whether a student may begin on a stone once more. Pure. */

/** What the number of attempts hangs on. */
export interface AttemptGround {
  /** Of the exercise's rules, for each stone. */
  readonly attempts: number;
  /** Beyond them, for this student. */
  readonly extraAttempts: number;
  /** True: the stone is in the exercise for retakes alone. */
  readonly isRetake: boolean;
  /** When each retake on this stone was granted to the student. */
  readonly grantedAt: readonly Date[];
  /** The student's attempts so far, oldest first. */
  readonly begun: readonly {
    readonly openedAt: Date;
    readonly isHandedIn: boolean;
    readonly isReleased: boolean;
  }[];
}

/** A retake that was granted after the latest attempt began waits to be used. */
function countWaiting({ grantedAt, begun }: AttemptGround): number {
  const latest = begun.at(-1);
  return grantedAt.filter((at) => latest === undefined || at > latest.openedAt).length;
}

/**
 * How many more attempts a student may begin now: none while one is on the bench. Once a debrief of the stone has been
 * released, its reference is known, and only a retake that staff granted since opens it again.
 */
export function countAttemptsLeft(ground: AttemptGround): number {
  const { attempts, extraAttempts, isRetake, grantedAt, begun } = ground;
  if (begun.at(-1)?.isHandedIn === false) return 0;
  const waiting = countWaiting(ground);
  if (isRetake || begun.some(({ isReleased }) => isReleased)) return Math.min(waiting, 1);
  return Math.max(waiting, attempts + extraAttempts + grantedAt.length - begun.length, 0);
}
