/** What the callers of a function are told, in the order of `CALLERS`. */

export const no = "not-found";

export const staff = ["ok", "ok", "ok", no, no, no] as const;

/** The tray is the first instructor's own, the section and its sittings are taught by the same one. */
export const theirs = ["ok", "ok", no, no, no, no] as const;

export const director = ["ok", "not-allowed", "not-allowed", no, no, no] as const;

/** The reading is Otto's own. */
export const reader = [no, no, "ok", no, no, no] as const;

export const owner = ["not-allowed", "not-allowed", "not-allowed", "ok", no, no] as const;

export const withoutId = { byId: false };
