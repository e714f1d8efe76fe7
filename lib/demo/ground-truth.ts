/** What really happened in a simulated sitting: what the engine can be held against. */
import type { Cause } from "@/lib/plot/mark";

/** Where a plotted mark came from. */
export type MarkOrigin =
  /** A feature of the reference: drawn in its own view or in the other. */
  | { readonly kind: "feature"; readonly reference: string; readonly view: "own" | "other" }
  /** Several small features of the reference drawn as one. */
  | { readonly kind: "merged"; readonly references: readonly string[] }
  /** Not in the stone there. `of`: the reference mark, or the decoy, that it stems from; null for dust and the like. */
  | { readonly kind: "stray"; readonly cause: Cause; readonly of: string | null };

/** Why a feature of the reference is not in the plot. */
export type MissReason = "not-seen" | "taken-back";

export interface GroundTruth {
  /** The turn that the stone was held in, degrees clockwise from 12 as the crown is seen, in (-180, 180]. */
  readonly heldTurnDeg: number;
  /** The turn that lays the plot back on the reference, in (-180, 180]. */
  readonly layBackTurnDeg: number;
  /** The pavilion view was drawn mirrored, as if seen through the crown. */
  readonly isPavilionMirrored: boolean;
  /** One for each mark of the plot, in its order. */
  readonly origins: readonly { readonly mark: string; readonly origin: MarkOrigin }[];
  /** Features that no mark of the plot came from, optional ones among them, in the order of the reference. */
  readonly missed: readonly { readonly reference: string; readonly why: MissReason }[];
}

/** A turn in (-180, 180], without -0. */
export function wrapTurnDeg(turnDeg: number): number {
  const wrapped = (((turnDeg + 180) % 360) + 360) % 360;
  return wrapped === 0 ? 180 : wrapped - 180;
}
