/** Rosters: who is in a section and who teaches it, and what bringing one in would do. Staff only. */
import { z } from "zod";
import type { Fault } from "@/lib/base/app-error";

/** A roster makes students and instructors; a director is added by hand. */
export const ROSTER_ROLES = ["student", "instructor"] as const;
export type RosterRole = (typeof ROSTER_ROLES)[number];

/** `same`: everything is so already; `left-out`: the file says that it is not meant. */
export const ROSTER_STATES = ["made", "changed", "same", "left-out", "refused"] as const;
export type RosterState = (typeof ROSTER_STATES)[number];

/** A section as a roster names it; `term` is empty where the roster does not say. */
export interface RosterSection {
  readonly name: string;
  readonly term: string;
  /** Where it is named: file, row and column. */
  readonly path: string;
}

/** One person of a roster, whatever form it came in. */
export interface RosterPerson {
  /** Where the person is named: file and row. */
  readonly path: string;
  readonly login: string;
  readonly name: string;
  readonly role: RosterRole;
  readonly sections: readonly RosterSection[];
}

/** A row that is read and not meant: a guardian, somebody to be deleted. */
export interface RosterLeftOut {
  readonly path: string;
  readonly login: string;
  readonly name: string;
  readonly why: string;
}

export const RosterRowSchema = z.strictObject({
  path: z.string(),
  login: z.string(),
  name: z.string(),
  role: z.enum(ROSTER_ROLES).nullable(),
  state: z.enum(ROSTER_STATES),
  /** In words: what is new or differs, or why not. */
  changes: z.array(z.string()),
});
export type RosterRow = z.infer<typeof RosterRowSchema>;

export const RosterPlanSchema = z.strictObject({
  /** What the file was taken for. */
  form: z.enum(["plain", "oneroster"]),
  rows: z.array(RosterRowSchema),
  /** Sections that would be made. */
  sections: z.array(z.strictObject({ name: z.string(), term: z.string() })),
  faults: z.array(z.strictObject({ path: z.string(), message: z.string() })),
  /** Of the roster and of everything that it is held against. */
  fingerprint: z.string(),
});
export type RosterPlan = z.infer<typeof RosterPlanSchema>;

/** A roster as its files say it. */
export interface ReadRoster {
  readonly form: RosterPlan["form"];
  readonly people: readonly RosterPerson[];
  readonly leftOut: readonly RosterLeftOut[];
  /** One or more: nothing of it can be brought in. */
  readonly faults: readonly Fault[];
}
