/** What the engine says of a plot: the JSON of the command line's `score`, and what the debrief shows besides. */
import { z } from "zod";
import { CauseSchema, IdSchema, ViewSchema } from "@/lib/plot/mark";
import { OverruleFateSchema } from "@/lib/plot/overrule";
import { PointSchema } from "@/lib/plot/shape";

const unit = z.number().min(0).max(1);

export const WouldFitSchema = z.strictObject({
  turnDeg: z.number(),
  mirrored: z.boolean(),
  gain: z.number(),
});

/** One view alone, read by a turn and a side of its own, as that view was drawn. */
export const ViewFitSchema = WouldFitSchema.extend({ view: ViewSchema });
export type ViewFit = z.infer<typeof ViewFitSchema>;

export const FoundSchema = z.strictObject({
  reference: IdSchema,
  mark: IdSchema,
  value: unit,
  location: unit,
  type: unit,
  extent: unit,
});
export const StraySchema = z.strictObject({
  mark: IdSchema,
  cause: CauseSchema,
  because: z.array(z.string()),
});
export type FoundResult = z.infer<typeof FoundSchema>;
export type StrayResult = z.infer<typeof StraySchema>;
export const LineSchema = z.strictObject({ what: z.string(), points: z.number() });

/** Exactly what `score` prints for a plot (design.md). Points have at most two decimals. */
export const ScoreResultSchema = z.strictObject({
  stone: IdSchema,
  by: IdSchema,
  total: z.number().min(0).max(100),
  alignment: z.strictObject({ turnDeg: z.number(), wouldFit: WouldFitSchema.nullable() }),
  found: z.array(FoundSchema),
  overlooked: z.array(IdSchema),
  strays: z.array(StraySchema),
  lines: z.array(LineSchema),
  suspectStone: IdSchema.nullable(),
});
export type ScoreResult = z.infer<typeof ScoreResultSchema>;

/** How a found mark was read. */
export const FoundDetailSchema = z.strictObject({
  reference: IdSchema,
  mark: IdSchema,
  how: z.enum(["matched", "other-view", "merged"]),
  /** `d` of scoring.md 1, girdle widths; null for a merge. */
  distance: z.number().nullable(),
  /** The same on this stone, where its measurements are known. */
  distanceMm: z.number().nullable(),
  /** What location, type and extent cost of the whole result, in points. */
  lost: z.strictObject({ location: z.number(), type: z.number(), extent: z.number(), view: z.number() }),
  words: z.array(z.string()),
});

export type FoundDetail = z.infer<typeof FoundDetailSchema>;

/** What a stray is explained by: something to draw on the diagram beside its evidence. */
export const StrayDetailSchema = z.strictObject({
  mark: IdSchema,
  /**
   * Where the reference mark, image, decoy or partner lies that explains it, in the frame of the mark's view with the plot
   * laid on the reference.
   */
  points: z.array(PointSchema),
  view: ViewSchema,
  /** The reference mark, decoy or other plotted mark that it is explained by. */
  of: IdSchema.nullable(),
  /** Names of the facets that an echo is seen in, entry first. */
  facets: z.array(z.string()),
});

export type StrayDetail = z.infer<typeof StrayDetailSchema>;

/** OSPA and GOSPA between the plot's places and the reference's, in girdle widths, and GOSPA's three parts. */
export const SetDistanceSchema = z.strictObject({
  ospa: z.number().min(0),
  gospa: z.number().min(0),
  location: z.number().min(0),
  overlooked: z.number().min(0),
  strays: z.number().min(0),
});
export type SetDistance = z.infer<typeof SetDistanceSchema>;

export const ScoreDetailSchema = z.strictObject({
  engineVersion: z.string(),
  found: z.array(FoundDetailSchema),
  strays: z.array(StrayDetailSchema),
  /** Plotted marks set against optional reference marks: neither found nor stray. */
  setAside: z.array(z.strictObject({ reference: IdSchema, mark: IdSchema })),
  /** F and the deduction of scoring.md 6, both 0…1. */
  foundShare: unit,
  deduction: unit,
  /** A second measure that no rubric enters but by its cut-off: how far the plot as a whole is from the reference. */
  setDistance: SetDistanceSchema,
  /** What to practise, composed from the causes; each sentence is backed by the result. */
  practise: z.array(z.string()),
  /** Where `wouldFit` is null: the view that would fit better if it alone were read otherwise. Older results have none. */
  viewFit: ViewFitSchema.nullable().default(null),
  /** What came of each overrule, in the order in which they were made; results from before there were any have none. */
  overrules: z.array(OverruleFateSchema).default([]),
});

export type ScoreDetail = z.infer<typeof ScoreDetailSchema>;

export const ScoredPlotSchema = z.strictObject({ result: ScoreResultSchema, detail: ScoreDetailSchema });
export type ScoredPlot = z.infer<typeof ScoredPlotSchema>;
