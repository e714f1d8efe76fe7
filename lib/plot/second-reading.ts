/** A second reader's plot of a stone, the comparison with its reference, and what it is settled into. Staff only. */
import { z } from "zod";
import { GRADED_PROPERTIES, PlotGradesSchema, ScalesSchema } from "@/lib/plot/grades";
import { DecoySchema, type IdSchema, MAX_MARKS, ReferenceMarkSchema } from "@/lib/plot/mark";
import { ReferenceSchema, StoneBodySchema } from "@/lib/plot/stone";
import { CharacteristicViewSchema } from "@/lib/plot/student-view";

const instant = z.iso.datetime();
const unit = z.number().min(0).max(1);
const count = z.int().min(0);

/**
 * `drawing`: the reader has not seen the reference; `handed-in`: compared; `settled`: a version was made of the two; `given-up`:
 * never compared, the reader may see the reference again.
 */
export const READING_STATES = ["drawing", "handed-in", "settled", "given-up"] as const;
export const ReadingStateSchema = z.enum(READING_STATES);

/** What a second reader draws: as a reference, clarity possibly missing while it is drawn. */
export const ReadingPlotSchema = z.strictObject({
  grades: PlotGradesSchema,
  marks: z.array(ReferenceMarkSchema).max(MAX_MARKS),
  decoys: z.array(DecoySchema).max(MAX_MARKS).default([]),
});
export type ReadingPlot = z.infer<typeof ReadingPlotSchema>;
export const EMPTY_READING: ReadingPlot = { grades: {}, marks: [], decoys: [] };

/** How near two readings of a stone are, in counts, so that a program can add them up. Pairs are (first, second). */
export const ReadingFiguresSchema = z.strictObject({
  /** Marks of each reading, and how many of them the engine set against one another. */
  first: count,
  second: count,
  matched: count,
  /** Matched ones that both gave the same characteristic. */
  named: count,
  /** F of scoring.md 6, the second held against the first and the first against the second. */
  secondByFirst: unit,
  firstBySecond: unit,
  /** OSPA and GOSPA between the two, girdle widths. */
  ospa: z.number().min(0),
  gospa: z.number().min(0),
  /** The turn that lays the second reading on the first. */
  turnDeg: z.number(),
  /** Properties that both graded; steps are second less first on a scale listed best first. */
  grades: z.array(
    z.strictObject({
      property: z.enum(GRADED_PROPERTIES),
      first: z.string(),
      second: z.string(),
      steps: z.int(),
    }),
  ),
});
export type ReadingFigures = z.infer<typeof ReadingFiguresSchema>;

export const DIFFERENCE_KINDS = [
  "pair",
  "only-first",
  "only-second",
  "decoy-only-first",
  "decoy-only-second",
  "grade",
] as const;

/** One thing in which the two may differ. The second reader's marks are laid on the first's. */
export const ReadingDifferenceSchema = z.strictObject({
  /** `pair:ID`, `only-first:ID`, … of the first reading's mark where it has one; `grade:PROPERTY`. */
  key: z.string().max(90),
  kind: z.enum(DIFFERENCE_KINDS),
  /** A pair in the same place and of the same name, or an equal grade: nothing to settle, though it may be. */
  agrees: z.boolean(),
  first: ReferenceMarkSchema.or(DecoySchema).nullable(),
  second: ReferenceMarkSchema.or(DecoySchema).nullable(),
  /** `d` of scoring.md 1, girdle widths, of a pair in one view. */
  distance: z.number().nullable(),
  grades: z
    .strictObject({
      property: z.enum(GRADED_PROPERTIES),
      first: z.string().nullable(),
      second: z.string().nullable(),
    })
    .nullable(),
});
export type ReadingDifference = z.infer<typeof ReadingDifferenceSchema>;

export const ReadingComparisonSchema = z.strictObject({
  figures: ReadingFiguresSchema,
  differences: z.array(ReadingDifferenceSchema),
});
export type ReadingComparison = z.infer<typeof ReadingComparisonSchema>;

/** What is done about a difference: the first reading is kept, the second taken, or the two are merged. */
export const CHOICES = ["first", "second", "merge"] as const;
export const ChoiceSchema = z.enum(CHOICES);
export type Choice = z.infer<typeof ChoiceSchema>;

/** The choices that a difference leaves. Decoys and grades cannot be merged. */
export function listChoices({ kind }: Pick<ReadingDifference, "kind">): readonly Choice[] {
  return kind === "pair" || kind === "only-first" || kind === "only-second" ? CHOICES : ["first", "second"];
}

export const ReadingRowSchema = z.strictObject({
  readingId: z.string(),
  readerName: z.string(),
  isOwn: z.boolean(),
  state: ReadingStateSchema,
  createdAt: instant,
  handedInAt: instant.nullable(),
  figures: ReadingFiguresSchema.nullable(),
  settledVersion: z.int().nullable(),
});
export type ReadingRow = z.infer<typeof ReadingRowSchema>;

/** A stone that the viewer is reading blind. */
export const BlindReadingSchema = z.strictObject({
  readingId: z.string(),
  stoneId: z.string(),
  trayId: z.string(),
  trayName: z.string(),
  label: z.string(),
  createdAt: instant,
});
export type BlindReading = z.infer<typeof BlindReadingSchema>;

/** The second readings of a stone, and whether the viewer may begin one. */
export const StoneReadingsSchema = z.strictObject({
  readings: z.array(ReadingRowSchema),
  /** The viewer's own reading that is not handed in. */
  openReadingId: z.string().nullable(),
  /** Why the viewer cannot begin one; null where they can. */
  whyNot: z.string().nullable(),
});
export type StoneReadings = z.infer<typeof StoneReadingsSchema>;

const ReadingHeadSchema = z.strictObject({
  readingId: z.string(),
  stoneId: z.string(),
  trayId: z.string(),
  trayName: z.string(),
  label: z.string(),
  readerName: z.string(),
  isOwn: z.boolean(),
  body: StoneBodySchema,
  characteristics: z.array(CharacteristicViewSchema),
  scales: ScalesSchema,
  createdAt: instant,
});

/** A reading that is being drawn: nothing of the reference is in it. */
export const OpenReadingSchema = z.strictObject({
  ...ReadingHeadSchema.shape,
  state: z.literal("drawing"),
  revision: z.int(),
  plot: ReadingPlotSchema,
});
export type OpenReading = z.infer<typeof OpenReadingSchema>;

/** A reading that was handed in, beside the reference. */
export const ClosedReadingSchema = z.strictObject({
  ...ReadingHeadSchema.shape,
  state: z.enum(["handed-in", "settled"]),
  handedInAt: instant,
  /** The version that it is compared with here. */
  againstVersion: z.int(),
  firstAuthorName: z.string(),
  reference: ReferenceSchema,
  comparison: ReadingComparisonSchema,
  /** Whether the viewer may settle it. */
  maySettle: z.boolean(),
  settledVersion: z.int().nullable(),
  settledByName: z.string().nullable(),
  settledAt: instant.nullable(),
});
export type ClosedReading = z.infer<typeof ClosedReadingSchema>;

export const SettlingSchema = z.record(z.string().max(90), ChoiceSchema);
export type Settling = z.infer<typeof SettlingSchema>;

/** Ids of the first reading's marks and decoys in the comparison, so that one mark's key names one mark. */
export const toDifferenceKey = (kind: ReadingDifference["kind"], id: z.infer<typeof IdSchema>) =>
  `${kind}:${id}`;
