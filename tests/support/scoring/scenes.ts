/** Stones, references and plots of every kind, for what must always hold of a score. */
import fc from "fast-check";
import { createSeededRandom } from "@/lib/base/seeded-random";
import { turnPoint } from "@/lib/gem/point";
import type { Decoy, PlottedMark, Proof, ReferenceMark } from "@/lib/plot/mark";
import type { Plot } from "@/lib/plot/plots-file";
import { type Rubric, resolveRubric } from "@/lib/plot/rubric";
import { mapVertices, type Shape } from "@/lib/plot/shape";
import type { Reference, StoneBody } from "@/lib/plot/stone";
import { type ScoreInput, scorePlot } from "@/lib/scoring/score-plot";
import { makeBody, makeInput, makeShape } from "@/tests/support/scoring/make-case";

export const BODIES: StoneBody[] = [
  makeBody(),
  makeBody({ cut: "oval", proportions: { lengthToWidth: 1.35 } }),
];
export const NAMES = ["crystal", "pinpoint", "cloud", "feather", "needle", "natural", "scratch"];
export const body = fc.constantFrom(...BODIES);

export const turnShape = (view: "crown" | "pavilion", shape: Shape, turnDeg: number) =>
  mapVertices(shape, (point) => turnPoint(view, point, turnDeg));
export const turnMarks = <M extends PlottedMark | ReferenceMark | Decoy>(
  marks: readonly M[],
  turnDeg: number,
): M[] => marks.map((mark) => ({ ...mark, shape: turnShape(mark.view, mark.shape, turnDeg) }));

/** Places in a tight row and on a coarse grid as often as anywhere, so that ties, chains and stacks come up. */
export const place = fc.oneof(
  fc
    .tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 1 }))
    .map(([x, y]): [number, number] => [0.2 + x / 50, 0.1 + y / 50]),
  fc
    .tuple(fc.integer({ min: -4, max: 4 }), fc.integer({ min: -4, max: 4 }))
    .map(([x, y]): [number, number] => [x / 12, y / 12]),
  fc
    .tuple(fc.double({ min: 0, max: 0.44, noNaN: true }), fc.double({ min: 0, max: 6.28, noNaN: true }))
    .map(([r, a]): [number, number] => [r * Math.cos(a), r * Math.sin(a)]),
);
export const shape: fc.Arbitrary<Shape> = fc.oneof(
  place.map((at): Shape => ({ kind: "dot", at })),
  fc.tuple(place, fc.nat(999)).map(([at, seed]) => makeShape(createSeededRandom(seed), at)),
  fc.tuple(place, fc.constantFrom(0.02, 0.08, 0.25)).map(
    ([[x, y], half]): Shape => ({
      kind: "outline",
      points: [
        [x - half, y - half],
        [x + half, y - half],
        [x + half, y + half],
        [x - half, y + half],
      ],
    }),
  ),
);
export const view = fc.constantFrom("crown" as const, "pavilion" as const);
export const common = { view, characteristic: fc.constantFrom(...NAMES), shape };

export const referenceMark = fc.record(
  {
    ...common,
    depth: fc.double({ min: 0, max: 1, noNaN: true }),
    weight: fc.integer({ min: 1, max: 5 }),
    optional: fc.boolean(),
  },
  { requiredKeys: ["view", "characteristic", "shape"] },
);
export const plottedMark = fc.record(
  { ...common, proofs: fc.constantFrom<Proof[]>(["wiped"], []), atMs: fc.integer({ min: 0, max: 20_000 }) },
  { requiredKeys: ["view", "characteristic", "shape"] },
);
export const decoy = fc.record({
  view,
  shape,
  cause: fc.constantFrom("echo" as const, "glint" as const, "other-view" as const),
});
export const withIds = <M>(prefix: string, marks: readonly M[]) =>
  marks.map((mark, i) => ({ id: `${prefix}${i + 1}`, ...mark }));

export const reference = (max: number, more: { decoys?: number; min?: number } = {}) =>
  fc
    .tuple(
      fc.array(referenceMark, { minLength: more.min ?? 0, maxLength: max }),
      fc.array(decoy, { maxLength: more.decoys ?? 0 }),
    )
    .map(
      ([marks, decoys]): Reference => ({
        grades: { clarity: "SI1", colour: "H", polish: "Good", symmetry: "Fair" },
        marks: withIds("r", marks),
        decoys: withIds("d", decoys),
      }),
    );
export const plot = (max: number) =>
  fc
    .array(plottedMark, { maxLength: max })
    .map((marks): Plot => ({ grades: { clarity: "VS2", polish: "Good" }, marks: withIds("m", marks) }));

/** A plot that has to do with its reference: some of its marks moved a little, and some strays. */
export const drawn = (source: Reference) =>
  fc
    .tuple(
      fc.array(
        fc.tuple(
          fc.nat(Math.max(0, source.marks.length - 1)),
          fc.tuple(
            fc.double({ min: -0.09, max: 0.09, noNaN: true }),
            fc.double({ min: -0.09, max: 0.09, noNaN: true }),
          ),
          fc.constantFrom(...NAMES, null),
        ),
        { maxLength: 8 },
      ),
      plot(4),
    )
    .map(([near, strays]): Plot => {
      const marks = near.flatMap(([index, [dx, dy], name]): Omit<PlottedMark, "id">[] => {
        const mark = source.marks[index];
        if (mark === undefined) return [];
        const moved = mapVertices(mark.shape, ([x, y]) => [x + dx, y + dy]);
        return [{ view: mark.view, characteristic: name ?? mark.characteristic, shape: moved }];
      });
      return {
        grades: strays.grades,
        marks: withIds("m", [...marks, ...strays.marks.map(({ id: _id, ...mark }) => mark)]),
      };
    });
export const scene = fc.record({ stone: body, reference: reference(7, { decoys: 2 }) }).chain((source) =>
  fc.record({
    stone: fc.constant(source.stone),
    reference: fc.constant(source.reference),
    plot: drawn(source.reference),
  }),
);

export type Scene = { stone: StoneBody; reference: Reference; plot: Plot };
export const score = ({ stone, reference, plot }: Scene, over: Partial<ScoreInput> = {}) =>
  scorePlot(makeInput(reference, plot, { stone, ...over }));
export const GIVEN: Rubric = resolveRubric({ orientation: "given" });

/** Runs a property with a fixed seed; `kept` are seeds of runs that once failed. */
export function check<T>(
  arbitrary: fc.Arbitrary<T>,
  holds: (value: T) => void,
  numRuns: number,
  kept: number[] = [],
) {
  for (const seed of [20_240, ...kept]) fc.assert(fc.property(arbitrary, holds), { seed, numRuns });
}

/** The plot that says just what the reference says, under other ids and in another order. */
export function copyPlot({ grades, marks }: Reference, turnDeg = 0): Plot {
  const copied = marks.map(
    ({ id, view, characteristic, shape }): PlottedMark => ({ id: `copy-${id}`, view, characteristic, shape }),
  );
  return { grades, marks: turnMarks(copied, turnDeg).reverse() };
}
