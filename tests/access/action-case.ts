/** One server action, who is not refused it, and how it is called. */
import type { Caller } from "@/tests/access/access-case";
import type { School } from "@/tests/support/school";

export interface ActionCase {
  /** Who is not refused. */
  readonly allowed: readonly Caller[];
  readonly call: (school: School) => Promise<{ readonly ok: boolean }>;
}

export const staff = ["director", "iris", "otto"] as const;

export const theirs = ["director", "iris"] as const;

export const director = ["director"] as const;

export const everyone = ["director", "iris", "otto", "ada", "ben", "cyd"] as const;
