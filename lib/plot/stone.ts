/** A practice stone as a file holds it: its geometry, how it is held, and its reference (design.md). */
import { z } from "zod";
import { CUT_NAMES } from "@/lib/gem/cut-name";
import { ProportionsSchema } from "@/lib/gem/proportions";
import { ReferenceGradesSchema } from "@/lib/plot/grades";
import { DecoySchema, IdSchema, MAX_MARKS, ReferenceMarkSchema } from "@/lib/plot/mark";

/** Diamond at the sodium line, rounded: Peter 1923 gives 2.41726. */
export const DEFAULT_REFRACTIVE_INDEX = 2.417;

const ClockDegSchema = z.number().min(-360).max(360);

/** What a stone is, without what is known of its clarity: everything here may be shown to whoever holds it. */
export const StoneBodySchema = z.strictObject({
  cut: z.enum(CUT_NAMES),
  proportions: ProportionsSchema.default({}),
  weightCt: z.number().gt(0).max(10_000).optional(),
  measurementsMm: z.tuple([z.number().gt(0), z.number().gt(0), z.number().gt(0)]).optional(),
  refractiveIndex: z.number().gt(1).max(4).default(DEFAULT_REFRACTIVE_INDEX),
  prongsDeg: z.array(ClockDegSchema).max(24).default([]),
  landmark: z.string().max(200).optional(),
});
export type StoneBody = z.infer<typeof StoneBodySchema>;

/** What is trusted of a stone's clarity. Never sent to a student before the debrief is released. */
export const ReferenceSchema = z.strictObject({
  grades: ReferenceGradesSchema,
  marks: z.array(ReferenceMarkSchema).max(MAX_MARKS),
  decoys: z.array(DecoySchema).max(MAX_MARKS).default([]),
});
export type Reference = z.infer<typeof ReferenceSchema>;

export const StoneSchema = z.strictObject({
  id: IdSchema,
  ...StoneBodySchema.shape,
  ...ReferenceSchema.shape,
});
export type Stone = z.infer<typeof StoneSchema>;

/** The reference half of a stone of a file. */
export function toReference(stone: Stone): Reference {
  return { grades: stone.grades, marks: stone.marks, decoys: stone.decoys };
}
