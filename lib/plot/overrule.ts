/** What an instructor rules on a scored plot, against the engine or for want of one (lib/scoring/SPEC.md 10). */
import { z } from "zod";
import { GRADED_PROPERTIES } from "@/lib/plot/grades";
import { CauseSchema, IdSchema } from "@/lib/plot/mark";

/** How right the place of a mark counts that is laid to a reference mark by a ruling. */
export const PLACE_CREDITS = ["measured", "half", "full"] as const;

/**
 * `together`: the plotted mark is that reference mark. `apart`: it is not. `cause`: why a stray came about; null where it
 * is not held against the plot. `grade`: the share of a graded property's worth that is given for it, 0…1.
 */
export const RulingSchema = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("together"),
    reference: IdSchema,
    mark: IdSchema,
    place: z.enum(PLACE_CREDITS),
  }),
  z.strictObject({ kind: z.literal("apart"), reference: IdSchema, mark: IdSchema }),
  z.strictObject({ kind: z.literal("cause"), mark: IdSchema, cause: CauseSchema.nullable() }),
  z.strictObject({
    kind: z.literal("grade"),
    property: z.enum(GRADED_PROPERTIES),
    credit: z.number().min(0).max(1),
  }),
]);
export type Ruling = z.infer<typeof RulingSchema>;

export const MAX_REASON = 500;
/** Plain text, as the student reads it once the debrief is released. */
export const ReasonSchema = z.string().trim().min(1, "say why").max(MAX_REASON);

/** A ruling in force. */
export interface Overrule {
  readonly id: string;
  readonly ruling: Ruling;
  readonly reason: string;
}

/** What came of an overrule when a plot was scored: whether it still applies, and if not, why. */
export const OverruleFateSchema = z.strictObject({
  overruleId: z.string(),
  applies: z.boolean(),
  why: z.string().nullable(),
});
export type OverruleFate = z.infer<typeof OverruleFateSchema>;

/**
 * Whether a later ruling takes the place of an earlier one: it is about the same mark's cause, the same grade, the same
 * pair, or lays a mark or a reference mark elsewhere.
 */
export function isReplacedBy(earlier: Ruling, later: Ruling): boolean {
  if (earlier.kind === "grade") return later.kind === "grade" && earlier.property === later.property;
  if (earlier.kind === "cause") return later.kind === "cause" && earlier.mark === later.mark;
  if (later.kind !== "together" && later.kind !== "apart") return false;
  const [sameMark, sameReference] = [earlier.mark === later.mark, earlier.reference === later.reference];
  if (sameMark && sameReference) return true;
  return earlier.kind === "together" && later.kind === "together" && (sameMark || sameReference);
}
