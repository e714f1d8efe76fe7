import type { CutName } from "@/lib/gem/cut-name";

/** The proportions that are single numbers, in the order in which forms list them, in words. */
export const PROPORTION_LABELS = {
  tablePct: "the table (% of the girdle width)",
  crownAngleDeg: "the crown angle (degrees)",
  pavilionAngleDeg: "the pavilion angle (degrees)",
  starPct: "the star length (% of the way from the table to the girdle)",
  lowerHalfPct: "the lower half length (% of the way from the girdle to the centre)",
  girdlePct: "the girdle thickness (% of the girdle width)",
  culetPct: "the culet (% of the girdle width)",
  lengthToWidth: "length to width",
  shoulderPct: "the fullness of the shoulders (41 is an ellipse, 50 a parabola, 100 a square corner)",
  wingPct: "the fullness of the wings (50 is slim, 62 near a circular arc, 80 full)",
  cleftPct: "the depth of the cleft (% of the girdle width)",
  cornerPct: "the cut-off corner (% of the girdle width, along the side)",
  chevrons: "the number of chevrons",
  crownSteps: "the number of crown steps",
  pavilionSteps: "the number of pavilion steps",
  stepDropDeg: "the difference between one step's angle and the next (degrees)",
} as const;

export type ProportionKey = keyof typeof PROPORTION_LABELS;

/** What a cut takes for one proportion: the standard value, and the range outside which it is refused. */
export interface CutRule {
  readonly standard: number;
  readonly min: number;
  readonly max: number;
}

function rule(standard: number, min: number, max: number): CutRule {
  return { standard, min, max };
}

type CutRules = Readonly<Partial<Record<ProportionKey, CutRule>>>;

const BRILLIANT: CutRules = {
  tablePct: rule(57, 35, 80),
  crownAngleDeg: rule(34.5, 15, 50),
  pavilionAngleDeg: rule(40.8, 30, 55),
  starPct: rule(50, 15, 85),
  lowerHalfPct: rule(77, 30, 95),
  girdlePct: rule(3, 0, 15),
  culetPct: rule(0, 0, 20),
};

const STEP: CutRules = {
  tablePct: rule(65, 35, 85),
  crownAngleDeg: rule(35, 10, 60),
  pavilionAngleDeg: rule(45, 25, 65),
  girdlePct: rule(4, 0, 15),
  culetPct: rule(0, 0, 30),
  crownSteps: rule(3, 1, 5),
  pavilionSteps: rule(3, 1, 6),
  stepDropDeg: rule(8, 2, 20),
};

/**
 * Which proportions each cut has, their standard values and ranges. Standards and ranges are this project's own
 * teaching choices within what is common practice in the trade (no source); they can be set stone by stone.
 * A range only keeps out what no cutter makes; whether the numbers fit together is judged by the solid itself.
 */
export const CUT_RULES: Readonly<Record<CutName, CutRules>> = {
  // A round's length to width is 1 within what a mean diameter hides.
  "round-brilliant": { ...BRILLIANT, lengthToWidth: rule(1, 0.97, 1.03) },
  oval: { ...BRILLIANT, lengthToWidth: rule(1.4, 1, 3) },
  marquise: { ...BRILLIANT, lengthToWidth: rule(2, 1.3, 4), wingPct: rule(62, 52, 90) },
  pear: {
    ...BRILLIANT,
    lengthToWidth: rule(1.55, 1.1, 3),
    wingPct: rule(60, 52, 90),
    shoulderPct: rule(41, 35, 65),
  },
  heart: {
    ...BRILLIANT,
    lengthToWidth: rule(1, 0.8, 1.3),
    cleftPct: rule(16, 6, 25),
    shoulderPct: rule(45, 38, 60),
    wingPct: rule(66, 52, 85),
  },
  cushion: { ...BRILLIANT, lengthToWidth: rule(1.1, 1, 2), shoulderPct: rule(62, 45, 85) },
  princess: {
    tablePct: rule(70, 50, 82),
    crownAngleDeg: rule(34, 20, 50),
    pavilionAngleDeg: rule(39.5, 30, 50),
    girdlePct: rule(3, 0, 15),
    culetPct: rule(0, 0, 10),
    lengthToWidth: rule(1, 1, 1.5),
    chevrons: rule(3, 1, 4),
  },
  radiant: {
    tablePct: rule(64, 45, 78),
    crownAngleDeg: rule(36, 15, 50),
    pavilionAngleDeg: rule(46, 35, 55),
    starPct: rule(45, 15, 85),
    girdlePct: rule(3, 0, 15),
    culetPct: rule(2, 0, 10),
    chevrons: rule(2, 1, 3),
    lengthToWidth: rule(1.2, 1, 2),
    cornerPct: rule(16, 8, 30),
  },
  emerald: { ...STEP, lengthToWidth: rule(1.4, 1, 3), cornerPct: rule(15, 5, 30) },
  "square-emerald": {
    ...STEP,
    tablePct: rule(60, 35, 80),
    culetPct: rule(2, 0, 20),
    lengthToWidth: rule(1, 1, 1.1),
    cornerPct: rule(24, 10, 35),
  },
  baguette: {
    ...STEP,
    lengthToWidth: rule(2.5, 1, 6),
    culetPct: rule(6, 0, 30),
    crownSteps: rule(1, 1, 3),
    pavilionSteps: rule(2, 1, 4),
  },
  custom: {},
};
