/** Several sittings, as they are chosen in a grid. */
import { z } from "zod";

export const SittingIdsSchema = z.strictObject({
  sittingIds: z
    .array(z.string())
    .min(1, "choose one or more")
    .max(5000)
    .transform((ids) => [...new Set(ids)]),
});
export type SittingIds = z.input<typeof SittingIdsSchema>;
