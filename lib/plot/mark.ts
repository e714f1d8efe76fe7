/** Marks: what a student plots, what a reference holds, and the decoys of a reference. */
import { z } from "zod";
import { ShapeSchema } from "@/lib/plot/shape";

export const ViewSchema = z.enum(["crown", "pavilion"]);

/** Ids are the author's own: any printable text without blanks at its ends. */
export const IdSchema = z
  .string()
  .min(1)
  .max(64)
  .regex(/^[^\s\p{C}](?:[^\p{C}]*[^\s\p{C}])?$/u, "must be printable and have no blank at either end");

const CharacteristicNameSchema = z.string().min(1).max(60);

export const PROOFS = ["wiped", "tilted", "regripped"] as const;
export const ProofSchema = z.enum(PROOFS);
export type Proof = z.infer<typeof ProofSchema>;

/** One thing that a student drew. `atMs` counts from the opening of the sitting. */
export const PlottedMarkSchema = z.strictObject({
  id: IdSchema,
  view: ViewSchema,
  characteristic: CharacteristicNameSchema,
  shape: ShapeSchema,
  confidence: z.int().min(1).max(5).optional(),
  proofs: z
    .array(ProofSchema)
    .max(PROOFS.length)
    .refine((proofs) => new Set(proofs).size === proofs.length, "names a proof twice")
    .optional(),
  atMs: z.number().min(0).max(1e12).optional(),
});
export type PlottedMark = z.infer<typeof PlottedMarkSchema>;

/** One thing that is in the stone. `depth`: 0 at the surface where it is seen, 1 at the surface behind it. */
export const ReferenceMarkSchema = z.strictObject({
  id: IdSchema,
  view: ViewSchema,
  characteristic: CharacteristicNameSchema,
  shape: ShapeSchema,
  depth: z.number().min(0).max(1).optional(),
  weight: z.number().gt(0).max(100).optional(),
  decidesGrade: z.boolean().optional(),
  optional: z.boolean().optional(),
});
export type ReferenceMark = z.infer<typeof ReferenceMarkSchema>;

/** Why a stray came about (design.md). */
export const CAUSES = ["dust", "echo", "glint", "double", "fragment", "other-view", "unexplained"] as const;
export const CauseSchema = z.enum(CAUSES);
export type Cause = z.infer<typeof CauseSchema>;

/** A place on the reference where this stone is known to mislead. */
export const DecoySchema = z.strictObject({
  id: IdSchema,
  view: ViewSchema,
  cause: CauseSchema,
  shape: ShapeSchema,
});
export type Decoy = z.infer<typeof DecoySchema>;

export const MAX_MARKS = 2000;
