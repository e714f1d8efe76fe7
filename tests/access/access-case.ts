/** One function that takes a viewer: who may call it on the first section's things, and how it is called. */
import type { Viewer } from "@/lib/access/viewer";
import type { AppErrorCode } from "@/lib/base/app-error";
import type { School } from "@/tests/support/school";

/**
 * Of the first section: its instructor `iris` (who owns the tray), its students `ada` (whose sitting it is, where there
 * is one) and `ben`; of another: the instructor `otto` and the student `cyd`.
 */
export const CALLERS = ["director", "iris", "otto", "ada", "ben", "cyd"] as const;
export type Caller = (typeof CALLERS)[number];

export type Outcome = "ok" | AppErrorCode;

export interface AccessCase {
  readonly outcomes: Readonly<Record<Caller, Outcome>>;
  /** Whether it is asked about something by its id: then an id of nothing must read like one of somebody else's. */
  readonly byId: boolean;
  readonly call: (viewer: Viewer, school: School) => Promise<unknown>;
}

type Row = readonly [Outcome, Outcome, Outcome, Outcome, Outcome, Outcome];

/** A case; outcomes in the order of `CALLERS`. */
export function makeCase(outcomes: Row, call: AccessCase["call"], { byId = true } = {}): AccessCase {
  const [director, iris, otto, ada, ben, cyd] = outcomes;
  return { outcomes: { director, iris, otto, ada, ben, cyd }, byId, call };
}
