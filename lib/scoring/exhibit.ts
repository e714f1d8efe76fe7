import type { Rubric } from "@/lib/plot/rubric";
import type { Matching } from "@/lib/scoring/match-marks";
import type { PlottedModel } from "@/lib/scoring/prepare-plot";
import type { PreparedReference } from "@/lib/scoring/prepare-reference";
import type { Rulings } from "@/lib/scoring/sort-rulings";

/** What an explanation draws on. */
export interface Exhibit {
  readonly prepared: PreparedReference;
  readonly laid: readonly PlottedModel[];
  readonly matching: Matching;
  readonly rubric: Rubric;
  readonly widthMm: number | null;
  readonly rulings: Rulings;
}
