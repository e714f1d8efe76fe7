/** Counts as they are kept: the schema that owns every `counts` column. */
import { z } from "zod";
import type { Counts } from "@/lib/agreement/counts";

const count = z.int().min(0);
const tally = z.record(z.string(), count);
const places = z.array(count).length(5);

/** `Counts` of one plot or of any sum of plots; whole numbers only, steps may be negative. */
export const CountsSchema: z.ZodType<Counts> = z.strictObject({
  plots: count,
  hundredths: count,
  hundredthsSquared: count,
  found: count,
  overlooked: count,
  strays: tally,
  straysSquared: count,
  characteristics: z.record(
    z.string(),
    z.strictObject({ reference: count, found: count, takenFor: tally, strays: count }),
  ),
  grades: z.record(
    z.string(),
    z.strictObject({
      graded: count,
      exact: count,
      withinOne: count,
      steps: z.int(),
      stepsSquared: count,
      confusion: z.record(z.string(), tally),
    }),
  ),
  freeResponse: z.strictObject({ found: places, strays: places }),
});
