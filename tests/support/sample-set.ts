/** A small exercise set for tests: one round brilliant with three marks, plain JSON as an author would write it. */

export interface SampleSet {
  format: string;
  version: number;
  title: string;
  stones: Record<string, unknown>[];
  [key: string]: unknown;
}

/** A fresh copy each time, so that a test may break it. */
export function makeSampleSet(): SampleSet {
  return {
    format: "loupework/exercise-set",
    version: 1,
    title: "Sample",
    stones: [
      {
        id: "S-1",
        cut: "round-brilliant",
        proportions: { tablePct: 57, crownAngleDeg: 34.5, pavilionAngleDeg: 40.8 },
        weightCt: 0.52,
        measurementsMm: [5.17, 5.2, 3.2],
        grades: { clarity: "SI1", colour: "H" },
        marks: [
          {
            id: "a",
            view: "crown",
            characteristic: "crystal",
            shape: {
              kind: "outline",
              points: [
                [0.1, 0.05],
                [0.12, 0.07],
                [0.13, 0.04],
              ],
            },
            depth: 0.3,
            weight: 3,
            decidesGrade: true,
          },
          { id: "b", view: "crown", characteristic: "pinpoint", shape: { kind: "dot", at: [-0.2, 0.1] } },
          {
            id: "c",
            view: "pavilion",
            characteristic: "scratch",
            shape: {
              kind: "stroke",
              points: [
                [0.1, -0.1],
                [0.2, -0.2],
              ],
            },
          },
        ],
      },
    ],
  };
}

/** A plots file of one plot on the sample's stone, with the given marks. */
export function makeSamplePlots(marks: unknown[] = []) {
  return {
    format: "loupework/plots",
    version: 1,
    plots: [{ stone: "S-1", by: "student-1", grades: { clarity: "SI1" }, marks }],
  };
}
