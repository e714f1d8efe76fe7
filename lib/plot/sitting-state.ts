/** The state that a sitting's log adds up to, as it is kept beside the log. */
import { z } from "zod";
import { PlotSchema } from "@/lib/plot/plots-file";
import { PreparedSchema } from "@/lib/plot/student-view";

export const SittingStateSchema = z.strictObject({
  plot: PlotSchema,
  prepared: PreparedSchema,
  lastSeq: z.int().min(0),
});
