/** Errors that a person is told about: a closed list of codes, a sentence, and where the fault lies. */

/** One fault in something that was handed in, with the path to it, as `stones[2].marks[0].shape.points[3]`. */
export interface Fault {
  readonly path: string;
  readonly message: string;
}

export type AppErrorCode =
  | "bad-input" // what was sent breaks a rule; `faults` says where
  | "signed-out" // nobody is signed in
  | "not-allowed" // this role may never do that
  | "reading-blind" // staff who read a stone blind asked for what tells of its reference
  | "not-found" // no such thing, or not for this viewer (the two are never told apart)
  | "conflict" // somebody else changed it first; nothing was written
  | "taken-over" // this sitting is being written from another tab or device
  | "closed" // the exercise or the sitting takes no more work
  | "too-many-attempts" // slow down
  | "no-room" // the disk that the database is on is full; nothing was written
  | "not-set-up"; // the program lacks something that its operator must set

/**
 * The one error type of the program. `message` is a full sentence fit for a screen; it never holds a
 * reference mark, a decoy or another student's work.
 */
export class AppError extends Error {
  readonly code: AppErrorCode;
  readonly faults: readonly Fault[];

  constructor(code: AppErrorCode, message: string, faults: readonly Fault[] = []) {
    super(message);
    this.name = "AppError";
    this.code = code;
    this.faults = faults;
  }
}

/** True for an AppError, optionally of one code. */
export function isAppError(thrown: unknown, code?: AppErrorCode): thrown is AppError {
  return thrown instanceof AppError && (code === undefined || thrown.code === code);
}
