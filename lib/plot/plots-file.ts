/** The plots file, `loupework/plots` version 1: any number of students' plots (design.md). */
import { z } from "zod";
import { PlotGradesSchema } from "@/lib/plot/grades";
import { IdSchema, MAX_MARKS, PlottedMarkSchema } from "@/lib/plot/mark";

export const PLOTS_FORMAT = "loupework/plots";

/** A student's marks and grades for a stone, wherever it is kept. */
export const PlotSchema = z.strictObject({
  grades: PlotGradesSchema.default({}),
  marks: z.array(PlottedMarkSchema).max(MAX_MARKS),
});
export type Plot = z.infer<typeof PlotSchema>;

export const FiledPlotSchema = z.strictObject({
  stone: IdSchema,
  by: IdSchema,
  ...PlotSchema.shape,
});
export type FiledPlot = z.infer<typeof FiledPlotSchema>;

export const PlotsFileSchema = z.strictObject({
  format: z.literal(PLOTS_FORMAT),
  version: z.literal(1),
  plots: z.array(FiledPlotSchema).max(100_000),
});
export type PlotsFile = z.infer<typeof PlotsFileSchema>;
