/** A student's progress as it may be sent to the student: strict, and made from released debriefs alone. */
import { z } from "zod";
import { CauseSchema } from "@/lib/plot/mark";

/** As lib/agreement's `Statistic`. */
const StatisticSchema = z.union([
  z.strictObject({ value: z.number(), low: z.number(), high: z.number() }),
  z.strictObject({ undefined: z.string() }),
]);

const StraysSchema = z.partialRecord(CauseSchema, z.int().min(0));

export const ProgressViewSchema = z.strictObject({
  studentName: z.string(),
  /** Labels of stones that nothing here covers: staff who look on are reading them blind. Empty to a student. */
  leftOut: z.array(z.string()),
  /** Released debriefs that this rests on. */
  plots: z.int(),
  meanTotal: StatisticSchema,
  /** Of the clarity grades. */
  exact: StatisticSchema,
  withinOne: StatisticSchema,
  bias: StatisticSchema,
  detection: StatisticSchema,
  straysPerPlot: StatisticSchema,
  strays: StraysSchema,
  characteristics: z.array(
    z.strictObject({
      characteristic: z.string(),
      reference: z.int(),
      found: z.int(),
      detection: StatisticSchema,
    }),
  ),
  /** By the Monday of the week of hand-in, in order. */
  weeks: z.array(
    z.strictObject({
      week: z.iso.date(),
      plots: z.int(),
      graded: z.int(),
      withinOne: StatisticSchema,
      detection: StatisticSchema,
      strays: StraysSchema,
    }),
  ),
  /** The stones themselves, the latest first. */
  stones: z.array(
    z.strictObject({
      sittingId: z.string(),
      label: z.string(),
      exerciseTitle: z.string(),
      handedInAt: z.iso.datetime(),
      total: z.number(),
      /** To the student: the debrief is closed while the stone is on the bench again. */
      isClosed: z.boolean(),
    }),
  ),
});
export type ProgressView = z.infer<typeof ProgressViewSchema>;
