/** The hand-in check: a few features of the stone in hand, and which stone of the tray they say it is. */
import { z } from "zod";
import { CUT_NAMES } from "@/lib/gem/cut-name";
import { PlottedMarkSchema, ViewSchema } from "@/lib/plot/mark";

/** More than this is a sitting, not a check. */
export const MOST_FEATURES = 12;

const share = z.number().min(0).max(1);

/** What was seen of the stone in hand. */
export const StoneEvidenceSchema = z.strictObject({
  cut: z.enum(CUT_NAMES),
  marks: z
    .array(PlottedMarkSchema)
    .min(1, "plot at least one feature; two or three tell more")
    .max(MOST_FEATURES),
  weightCt: z.number().gt(0).max(10_000).nullable(),
  /** Held as the reference is held, by its landmark; else any turn of the cut is tried. */
  isHeldByLandmark: z.boolean(),
});
export type StoneEvidence = z.infer<typeof StoneEvidenceSchema>;

/**
 * `fits`: the stone that the label names fits best; `other`: another stone of the tray fits clearly better, or the
 * weight rules the label out; `none`: no stone of the tray fits; `unsure`: the evidence does not tell.
 */
export const CHECK_OUTCOMES = ["fits", "other", "none", "unsure"] as const;
export type CheckOutcome = (typeof CHECK_OUTCOMES)[number];

/** Outcomes that contradict a label: staff are told of them until somebody has settled them. */
export const MISMATCHES = ["other", "none"] as const satisfies readonly CheckOutcome[];

/** How far the first stands before the second; no probability (SPEC 8.6). */
export const CERTAINTIES = ["clear", "likely", "open"] as const;

export const CheckRankSchema = z.strictObject({
  label: z.string(),
  /** What ranks: the two below multiplied. */
  fit: share,
  /** How much of what was plotted is in this stone's reference. */
  marksFit: share,
  /** 1 where the weights agree, 0 where they rule the stone out; null where one of the two is not known. */
  weightFit: share.nullable(),
  /** How many of the plotted features lie where this stone has one. */
  placed: z.int(),
  turnDeg: z.number(),
});
export type CheckRank = z.infer<typeof CheckRankSchema>;

/** A feature that one of the two best stones has and the other lacks, as it lies with the stone held as it was. */
export const TellingFeatureSchema = z.strictObject({
  label: z.string(),
  lackedBy: z.string(),
  view: ViewSchema,
  characteristic: z.string(),
  place: z.string(),
});
export type TellingFeature = z.infer<typeof TellingFeatureSchema>;

/** For staff alone: it tells of references. */
export const StoneVerdictSchema = z.strictObject({
  /** Stones of this cut that have a reference, the best first. */
  ranks: z.array(CheckRankSchema),
  /** Null where no label was given. */
  outcome: z.enum(CHECK_OUTCOMES).nullable(),
  certainty: z.enum(CERTAINTIES),
  /** The first stone's fit less the second's. */
  margin: share,
  /** What to look at to be surer. */
  telling: z.array(TellingFeatureSchema),
  /** The weights of the two best, where weighing would tell them apart. */
  weighing: z.tuple([z.number(), z.number()]).nullable(),
});
export type StoneVerdict = z.infer<typeof StoneVerdictSchema>;
