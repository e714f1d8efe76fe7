import type { CheckRank } from "@/lib/plot/stone-check";
import type { PreparedReference } from "@/lib/scoring/prepare-reference";

/** A stone with the reading in which it fits best. */
export interface Candidate extends CheckRank {
  readonly prepared: PreparedReference;
  /** Indices of the reference marks that were plotted, in that reading. */
  readonly seen: ReadonlySet<number>;
}
