import type { Rubric } from "@/lib/plot/rubric";
import type { Matching } from "@/lib/scoring/match-marks";
import type { PlottedModel } from "@/lib/scoring/prepare-plot";
import type { PreparedReference } from "@/lib/scoring/prepare-reference";

/** What an explanation draws on. */
export interface Exhibit {
  readonly prepared: PreparedReference;
  readonly laid: readonly PlottedModel[];
  readonly matching: Matching;
  readonly rubric: Rubric;
  readonly widthMm: number | null;
}
