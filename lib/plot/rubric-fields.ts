/** Every number of a rubric as a person reads and types it: its words, its unit, its limits and why it is there. Pure. */

import type { Rubric } from "@/lib/plot/rubric";

/** How a number is shown: the text behind it, and by what the rubric's own value is multiplied. */
const UNITS = {
  widths: { text: "", factor: 1 },
  percent: { text: "%", factor: 100 },
  points: { text: "pts", factor: 1 },
  degrees: { text: "°", factor: 1 },
  seconds: { text: "s", factor: 0.001 },
  count: { text: "", factor: 1 },
} as const;

export interface RubricField {
  /** The place in the rubric: `parts.location`. */
  readonly path: string;
  readonly label: string;
  readonly unit: keyof typeof UNITS;
  /** Limits as shown, both allowed; they are the schema's own. */
  readonly min: number;
  readonly max: number;
  /** The least is a bound that is not allowed itself. */
  readonly isAboveMin?: boolean;
  readonly isWhole?: boolean;
  readonly step: number;
  readonly why: string;
}

export interface RubricGroup {
  readonly title: string;
  readonly lead: string;
  readonly fields: readonly RubricField[];
}

const toWidths = (path: string, label: string, why: string): RubricField => ({
  path,
  label,
  unit: "widths",
  min: 0,
  max: 1,
  isAboveMin: true,
  step: 0.005,
  why,
});
const toPercent = (path: string, label: string, why: string): RubricField => ({
  path,
  label,
  unit: "percent",
  min: 0,
  max: 100,
  step: 1,
  why,
});
const toPoints = (path: string, label: string, why: string, step = 0.5): RubricField => ({
  path,
  label,
  unit: "points",
  min: 0,
  max: 100,
  step,
  why,
});

const toDegrees = (path: string, label: string, why: string): RubricField => ({
  path,
  label,
  unit: "degrees",
  min: 0,
  max: 90,
  step: 1,
  why,
});

export const RUBRIC_GROUPS: readonly RubricGroup[] = [
  {
    title: "What the points are for",
    lead: "The three add up to 100.",
    fields: [
      toPoints(
        "shares.plot",
        "The plot",
        "Seeing what is there: the larger this is, the more the exercise is about plotting.",
        1,
      ),
      toPoints("shares.clarity", "The clarity grade", "Judging what was seen.", 1),
      toPoints(
        "shares.otherGrades",
        "The other grades together",
        "Split evenly among those that the reference has; to clarity where it has no other.",
        1,
      ),
    ],
  },
  {
    title: "When a mark is in the right place",
    lead: "In girdle widths: the stone’s own size, so that a small stone is judged like a large one.",
    fields: [
      toWidths("near", "Full credit within", "A hand draws no finer than this; within it nothing is lost."),
      toWidths(
        "far",
        "No credit beyond",
        "From here on the mark and the reference’s are not taken for the same thing.",
      ),
    ],
  },
  {
    title: "What a found mark is worth",
    lead: "Place, characteristic and size add up to 100 %.",
    fields: [
      toPercent("parts.location", "Place", "How much of a mark’s worth is where it was drawn."),
      toPercent(
        "parts.type",
        "Characteristic",
        "How much is what it was called; a like one earns half of this.",
      ),
      toPercent("parts.extent", "Size", "How much is how large it was drawn."),
      toPercent(
        "otherView",
        "Seen from the other side",
        "What is left of its worth when it was drawn in the other view than the reference’s.",
      ),
      toPercent(
        "merged",
        "Several drawn as one",
        "What each of several marks earns when one outline holds them all.",
      ),
    ],
  },
  {
    title: "How the stone is held",
    lead: "A turned stone gives a turned plot; this says when that is no fault.",
    fields: [
      {
        path: "turnSupport",
        label: "Marks that must agree on a turn",
        unit: "count",
        min: 1,
        max: 50,
        isWhole: true,
        step: 1,
        why: "With fewer, a sparse plot would fit in some turn by luck.",
      },
      toPoints(
        "wouldFitGain",
        "Say that a plot would fit, from a gain of",
        "Earns nothing: from this gain on the debrief says that the plot fits when it is mirrored or turned; of one view alone, from half of it.",
        1,
      ),
    ],
  },
  {
    title: "What a stray costs",
    lead: "Each by its cause, in points of a hundred of the plot’s share.",
    fields: [
      toPoints("deductions.dust", "Dust", "The stone was not clean: the fault that a wipe mends."),
      toPoints("deductions.echo", "Echo", "A reflection taken for an inclusion; tilting tells."),
      toPoints("deductions.glint", "Glint", "Metal taken for an inclusion; a second grip tells."),
      toPoints(
        "deductions.unexplained",
        "No known cause",
        "Nothing explains it: something was imagined, or the reference lacks it.",
      ),
      toPoints("deductions.double", "Drawn twice", "A real feature, drawn once more from the other side."),
      toPoints("deductions.fragment", "Drawn in pieces", "A real feature in more pieces than it has."),
      toPoints(
        "deductionCap",
        "All strays together, at most",
        "Keeps a dusty stone from wiping out what was found.",
        1,
      ),
    ],
  },
  {
    title: "When a stray counts as dust or glint",
    lead: "These change what the debrief says of a stray, and what it costs through that.",
    fields: [
      toWidths("dust.extent", "Dust is no larger than", "A speck; anything larger is not dust."),
      {
        path: "dust.burstDots",
        label: "Dots in a row that make a burst",
        unit: "count",
        min: 2,
        max: 100,
        isWhole: true,
        step: 1,
        why: "So many quick dots are the sign of a stone that was not cleaned.",
      },
      {
        path: "dust.burstGapMs",
        label: "Longest pause within a burst",
        unit: "seconds",
        min: 0,
        max: 60,
        isAboveMin: true,
        step: 0.1,
        why: "Slower than this, each dot was looked at.",
      },
      toPercent(
        "glint.rim",
        "Glint lies in the outermost",
        "Metal shines in at the rim: this share of the way from centre to girdle.",
      ),
      toDegrees(
        "glint.oppositeDeg",
        "Tweezers: opposite, to within",
        "Two tips hold the stone across its middle.",
      ),
      toDegrees("glint.prongDeg", "Prongs: within", "How near a prong’s clock position its reflection lies."),
    ],
  },
];

export const RUBRIC_FIELDS: readonly RubricField[] = RUBRIC_GROUPS.flatMap(({ fields }) => fields);

/** What stands behind the number. */
export function getUnitText({ unit }: Pick<RubricField, "unit">): string {
  return UNITS[unit].text;
}

/** A rubric's value as it is shown, without what multiplying leaves in the last digits. */
export function toShown({ unit }: Pick<RubricField, "unit">, value: number): string {
  return String(Number((value * UNITS[unit].factor).toPrecision(12)));
}

/** A shown number as the rubric's value. */
export function fromShown({ unit }: Pick<RubricField, "unit">, shown: number): number {
  return Number((shown / UNITS[unit].factor).toPrecision(12));
}

/** The number at a field's path. */
export function readRubricAt(rubric: Rubric, path: string): number {
  let at: unknown = rubric;
  for (const step of path.split(".")) at = (at as Record<string, unknown>)[step];
  return at as number;
}
