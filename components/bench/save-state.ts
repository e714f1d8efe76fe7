/** What the bench's save client knows and shows. */
import type { Refusal } from "@/components/bench/bench-door";
import type { SittingEvent, SittingState } from "@/lib/plot/sitting-event";

/**
 * `opening`: not known yet. `saved`: all is safe on the server. `saving`: on its way. `offline`: kept in this
 * browser only. `elsewhere`: another tab or device writes. `closed`: takes no more work. `handed-in`: from here, just
 * now. `unsaved`: refused.
 */
export type SaveWord =
  | "opening"
  | "saved"
  | "saving"
  | "offline"
  | "elsewhere"
  | "closed"
  | "handed-in"
  | "unsaved";

export interface SaveState {
  readonly word: SaveWord;
  /** The sitting as it stands in this browser, unsaved changes included. */
  readonly sitting: SittingState;
  /** Counts up when the sitting changes other than by the editor: a key to remount it by. */
  readonly generation: number;
  readonly unsavedCount: number;
  /** False when the browser cannot keep unsaved changes over a reload. */
  readonly canKeep: boolean;
  readonly canWrite: boolean;
  /** Changes of this browser that were not saved and cannot be as they are. */
  readonly stranded: readonly SittingEvent[];
  /** The stranded changes can be added or left out now, and one of the two must be said before work goes on. */
  readonly mustDecide: boolean;
  readonly refusal: Refusal | null;
}

/** The one word that is shown. */
export const SAVE_WORDS: Readonly<Record<SaveWord, string>> = {
  opening: "Opening",
  saved: "Saved",
  saving: "Saving",
  offline: "Offline",
  elsewhere: "Elsewhere",
  closed: "Closed",
  "handed-in": "Handed in",
  unsaved: "Unsaved",
};

/** The word for a refusal that ends the writing here. */
export function findRefusalWord(code: string): SaveWord {
  if (code === "closed") return "closed";
  return code === "taken-over" || code === "conflict" ? "elsewhere" : "unsaved";
}
