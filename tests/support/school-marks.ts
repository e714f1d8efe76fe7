/** What the school of the tests draws: marks, references and readings, with texts and numbers that occur nowhere else. */
import type { PlottedMark } from "@/lib/plot/mark";
import { DEFAULT_RUBRIC, type Rubric } from "@/lib/plot/rubric";
import type { ReadingPlot } from "@/lib/plot/second-reading";
import type { Reference } from "@/lib/plot/stone";

/** Texts and digits that only a reference, a decoy or another student's work holds. */
export const SECRETS = {
  reference: ["reference-secret", "0.1357911", "note-secret"],
  decoy: ["decoy-secret", "0.2468013"],
  /** Of Ada, Ben and Cyd: a coordinate of each one's plot. */
  ada: ["0.0314159"],
  ben: ["0.1271828"],
  cyd: ["0.0161803"],
  /** Of Otto's second readings. */
  reading: ["reading-secret", "0.0577215"],
  /** What Iris ruled and wrote of Ada's plot, which is not released. */
  review: ["overrule-secret", "comment-secret"],
} as const;

/** The reference of both stones. */
export const REFERENCE: Reference = {
  grades: { clarity: "SI2", colour: "H" },
  marks: [
    {
      id: "reference-secret-1",
      view: "crown",
      characteristic: "laser-drill-hole",
      shape: { kind: "dot", at: [0.1357911, 0.05] },
      depth: 0.3,
      weight: 3,
      decidesGrade: true,
    },
    {
      id: "reference-secret-2",
      view: "crown",
      characteristic: "feather",
      shape: {
        kind: "stroke",
        points: [
          [-0.2, 0.1],
          [-0.25, 0.1357911],
        ],
      },
    },
  ],
  decoys: [
    { id: "decoy-secret-1", view: "crown", cause: "echo", shape: { kind: "dot", at: [0.2468013, -0.1] } },
  ],
};

/** Otto's second reading of either stone: one mark of the reference, another name for it, and one of his own. */
export const READING: ReadingPlot = {
  grades: { clarity: "SI1", colour: "H" },
  marks: [
    {
      id: "reading-secret-1",
      view: "crown",
      characteristic: "crystal",
      shape: { kind: "dot", at: [0.1357911, 0.0577215] },
    },
    {
      id: "reading-secret-2",
      view: "pavilion",
      characteristic: "pinpoint",
      shape: { kind: "dot", at: [0, -0.3] },
    },
  ],
  decoys: [],
};

/** Every plot of the school gains by it: a grade three steps away earns something, and place counts for more. */
export const LENIENT_RUBRIC: Rubric = {
  ...DEFAULT_RUBRIC,
  parts: { location: 0.7, type: 0.2, extent: 0.1 },
  gradeCredit: [1, 0.6, 0.4, 0.2],
};

/** A dot at which a plot can be told from every other. */
export function makeMark(id: string, x: number, y = 0.05): PlottedMark {
  return { id, view: "crown", characteristic: "crystal", shape: { kind: "dot", at: [x, y] }, atMs: 1000 };
}

/** What a student sees of a stone in hand, for the hand-in check. */
export const SEEN = { marks: [makeMark("m1", 0.0314159)], weightCt: null, isHeldByLandmark: false };
