/** What must always hold (lib/scoring/SPEC.md 9). A run that once failed keeps its seed in the list of its test. */
import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { createSeededRandom } from "@/lib/base/seeded-random";
import { getSolid } from "@/lib/gem/build-solid";
import { findSymmetryTurns } from "@/lib/gem/find-symmetry-turns";
import { isInsideOutline } from "@/lib/gem/is-inside-outline";
import { turnPoint } from "@/lib/gem/point";
import { DEFAULT_CHARACTERISTICS } from "@/lib/plot/characteristic";
import { DEFAULT_SCALES } from "@/lib/plot/grades";
import type { Decoy, PlottedMark, Proof, ReferenceMark } from "@/lib/plot/mark";
import { type Plot, PlotSchema } from "@/lib/plot/plots-file";
import { DEFAULT_RUBRIC, type Rubric, type RubricOverrides, resolveRubric } from "@/lib/plot/rubric";
import { ScoredPlotSchema } from "@/lib/plot/score-result";
import { listVertices, mapVertices, type Shape } from "@/lib/plot/shape";
import { type Reference, ReferenceSchema, type StoneBody } from "@/lib/plot/stone";
import { prepareReference, type ScoreInput, scorePlot } from "@/lib/scoring/score-plot";
import { makeBody, makeInput, makeShape } from "@/tests/support/scoring/make-case";

// A property scores hundreds of stones; on a busy machine that takes its time.
vi.setConfig({ testTimeout: 180_000 });

const BODIES: StoneBody[] = [makeBody(), makeBody({ cut: "oval", proportions: { lengthToWidth: 1.35 } })];
const NAMES = ["crystal", "pinpoint", "cloud", "feather", "needle", "natural", "scratch"];
const body = fc.constantFrom(...BODIES);

const turnShape = (view: "crown" | "pavilion", shape: Shape, turnDeg: number) =>
  mapVertices(shape, (point) => turnPoint(view, point, turnDeg));
const turnMarks = <M extends PlottedMark | ReferenceMark | Decoy>(
  marks: readonly M[],
  turnDeg: number,
): M[] => marks.map((mark) => ({ ...mark, shape: turnShape(mark.view, mark.shape, turnDeg) }));

/** Places in a tight row and on a coarse grid as often as anywhere, so that ties, chains and stacks come up. */
const place = fc.oneof(
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
const shape: fc.Arbitrary<Shape> = fc.oneof(
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
const view = fc.constantFrom("crown" as const, "pavilion" as const);
const common = { view, characteristic: fc.constantFrom(...NAMES), shape };

const referenceMark = fc.record(
  {
    ...common,
    depth: fc.double({ min: 0, max: 1, noNaN: true }),
    weight: fc.integer({ min: 1, max: 5 }),
    optional: fc.boolean(),
  },
  { requiredKeys: ["view", "characteristic", "shape"] },
);
const plottedMark = fc.record(
  { ...common, proofs: fc.constantFrom<Proof[]>(["wiped"], []), atMs: fc.integer({ min: 0, max: 20_000 }) },
  { requiredKeys: ["view", "characteristic", "shape"] },
);
const decoy = fc.record({
  view,
  shape,
  cause: fc.constantFrom("echo" as const, "glint" as const, "other-view" as const),
});
const withIds = <M>(prefix: string, marks: readonly M[]) =>
  marks.map((mark, i) => ({ id: `${prefix}${i + 1}`, ...mark }));

const reference = (max: number, more: { decoys?: number; min?: number } = {}) =>
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
const plot = (max: number) =>
  fc
    .array(plottedMark, { maxLength: max })
    .map((marks): Plot => ({ grades: { clarity: "VS2", polish: "Good" }, marks: withIds("m", marks) }));

/** A plot that has to do with its reference: some of its marks moved a little, and some strays. */
const drawn = (source: Reference) =>
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
const scene = fc.record({ stone: body, reference: reference(7, { decoys: 2 }) }).chain((source) =>
  fc.record({
    stone: fc.constant(source.stone),
    reference: fc.constant(source.reference),
    plot: drawn(source.reference),
  }),
);

type Scene = { stone: StoneBody; reference: Reference; plot: Plot };
const score = ({ stone, reference, plot }: Scene, over: Partial<ScoreInput> = {}) =>
  scorePlot(makeInput(reference, plot, { stone, ...over }));
const GIVEN: Rubric = resolveRubric({ orientation: "given" });

/** Runs a property with a fixed seed; `kept` are seeds of runs that once failed. */
function check<T>(
  arbitrary: fc.Arbitrary<T>,
  holds: (value: T) => void,
  numRuns: number,
  kept: number[] = [],
) {
  for (const seed of [20_240, ...kept]) fc.assert(fc.property(arbitrary, holds), { seed, numRuns });
}

/** The plot that says just what the reference says, under other ids and in another order. */
function copyPlot({ grades, marks }: Reference, turnDeg = 0): Plot {
  const copied = marks.map(
    ({ id, view, characteristic, shape }): PlottedMark => ({ id: `copy-${id}`, view, characteristic, shape }),
  );
  return { grades, marks: turnMarks(copied, turnDeg).reverse() };
}

describe("rule 9.1: a plot equal to its reference", () => {
  it("scores exactly 100", () => {
    check(
      fc.record({ stone: body, reference: reference(9, { decoys: 2 }) }),
      ({ stone, reference }) => {
        const { result } = score({ stone, reference, plot: copyPlot(reference) });
        expect(result.total).toBe(100);
        expect(result.alignment).toEqual({ turnDeg: 0, wouldFit: null });
        expect([result.overlooked, result.strays]).toEqual([[], []]);
      },
      120,
    );
  });

  it("scores exactly 100 turned by any turn of the cut, from three marks on", () => {
    check(
      fc.record({ stone: body, reference: reference(9, { min: 3 }), pick: fc.nat() }),
      ({ stone, reference, pick }) => {
        const turns = findSymmetryTurns(getSolid(stone.cut, stone.proportions));
        const turnDeg = turns[pick % turns.length] ?? 0;
        const { result } = score({ stone, reference, plot: copyPlot(reference, turnDeg) });
        expect(result.total).toBe(100);
        expect(result.strays).toEqual([]);
      },
      120,
    );
  });
});

describe("rule 9.2: order", () => {
  it("of marks and references changes nothing at all", () => {
    check(
      fc.tuple(scene, fc.nat()),
      ([one, seed]) => {
        const random = createSeededRandom(seed);
        const { grades, marks, decoys } = one.reference;
        const mixed = { grades, marks: random.shuffle(marks), decoys: random.shuffle(decoys) };
        const plot = { ...one.plot, marks: random.shuffle(one.plot.marks) };
        expect(score({ stone: one.stone, reference: mixed, plot })).toEqual(score(one));
      },
      80,
    );
  });
});

describe("rule 9.3: turning all together", () => {
  it("changes no points and no causes", () => {
    check(
      fc.tuple(scene, fc.nat()),
      ([one, pick]) => {
        const turns = findSymmetryTurns(getSolid(one.stone.cut, one.stone.proportions));
        const turnDeg = turns[pick % turns.length] ?? 0;
        const { grades, marks, decoys } = one.reference;
        const turned = {
          stone: one.stone,
          reference: { grades, marks: turnMarks(marks, turnDeg), decoys: turnMarks(decoys, turnDeg) },
          plot: { ...one.plot, marks: turnMarks(one.plot.marks, turnDeg) },
        };
        const [before, after] = [score(one).result, score(turned).result];
        expect(after.total).toBe(before.total);
        expect(after.lines.map((line) => line.points)).toEqual(before.lines.map((line) => line.points));
      },
      80,
    );
  });
});

describe("rule 9.4: a mark near nothing", () => {
  const isFarFromAll = (mark: PlottedMark, one: Scene): boolean => {
    if (mark.shape.kind === "outline") return false;
    const prepared = prepareReference({ ...one, stoneId: "S-1", characteristics: DEFAULT_CHARACTERISTICS });
    const targets = prepared.targets[mark.view].map(({ geometry }) => geometry);
    const decoys = prepared.decoys
      .filter(({ decoy }) => decoy.view === mark.view)
      .map(({ geometry }) => geometry);
    return prepared.turns.every((turnDeg) =>
      listVertices(turnShape(mark.view, mark.shape, turnDeg)).every(([x, y]) =>
        [...targets, ...decoys].every(
          ({ centreX, centreY, reach }) => Math.hypot(x - centreX, y - centreY) - reach > 0.2,
        ),
      ),
    );
  };

  it("never raises the total", () => {
    let tried = 0;
    check(
      fc.tuple(scene, plottedMark),
      ([one, mark]) => {
        const added = { ...mark, id: "added" };
        if (!isFarFromAll(added, one)) return;
        tried += 1;
        const more = { ...one, plot: { ...one.plot, marks: [...one.plot.marks, added] } };
        expect(score(more).result.total).toBeLessThanOrEqual(score(one).result.total);
      },
      400,
    );
    expect(tried).toBeGreaterThan(25);
  });

  it("not even opposite a handful of dust at the rim (rule 6.4)", () => {
    // Mostly a cluster of unwiped dots on one side, and the last one opposite.
    const off = fc.integer({ min: -12, max: 12 });
    const rim = fc.tuple(
      off,
      fc.oneof({ weight: 5, arbitrary: fc.constant(false) }, fc.boolean()),
      fc.oneof({ weight: 4, arbitrary: fc.constant(false) }, fc.boolean()),
    );
    const last = fc.tuple(off, fc.constant(true), fc.boolean());
    check(
      fc.tuple(fc.array(rim, { maxLength: 9 }), last),
      ([dots, last]) => {
        const toMark = (
          [off, across, wiped]: readonly [number, boolean, boolean],
          id: string,
        ): PlottedMark => {
          const angle = ((off + (across ? 180 : 0)) * Math.PI) / 180;
          const at: [number, number] = [0.48 * Math.sin(angle), 0.48 * Math.cos(angle)];
          return {
            id,
            view: "crown",
            characteristic: "pinpoint",
            shape: { kind: "dot", at },
            proofs: wiped ? ["wiped"] : [],
          };
        };
        const reference: Reference = {
          grades: { clarity: "SI1" },
          marks: [
            { id: "a", view: "pavilion", characteristic: "feather", shape: { kind: "dot", at: [0, 0] } },
          ],
          decoys: [],
        };
        const marks = dots.map((dot, i) => toMark(dot, `m${i}`));
        const before = score({ stone: makeBody(), reference, plot: { grades: {}, marks } });
        const after = score({
          stone: makeBody(),
          reference,
          plot: { grades: {}, marks: [...marks, toMark(last, "x")] },
        });
        expect(after.result.total).toBeLessThanOrEqual(before.result.total);
        expect(after.detail.deduction).toBeGreaterThanOrEqual(before.detail.deduction - 1e-12);
      },
      600,
    );
  });
});

describe("rule 9.5: within one reading", () => {
  it("deleting a mark never raises F", () => {
    check(
      fc.tuple(scene, fc.nat()),
      ([one, pick]) => {
        const { marks } = one.plot;
        if (marks.length === 0) return;
        const fewer = { ...one.plot, marks: marks.filter((_, index) => index !== pick % marks.length) };
        const before = score(one, { rubric: GIVEN }).detail.foundShare;
        expect(score({ ...one, plot: fewer }, { rubric: GIVEN }).detail.foundShare).toBeLessThanOrEqual(
          before + 1e-9,
        );
      },
      150,
    );
  });

  it("moving a dot straight towards the dot it is matched with never lowers F", () => {
    let moved = 0;
    check(
      fc.tuple(scene, fc.double({ min: 0, max: 1, noNaN: true })),
      ([one, share]) => {
        const before = score(one, { rubric: GIVEN });
        for (const { reference, mark, how } of before.detail.found) {
          const to = one.reference.marks.find(({ id }) => id === reference)?.shape;
          const from = one.plot.marks.find(({ id }) => id === mark)?.shape;
          if (how !== "matched" || to?.kind !== "dot" || from?.kind !== "dot") continue;
          moved += 1;
          const at: [number, number] = [
            from.at[0] + share * (to.at[0] - from.at[0]),
            from.at[1] + share * (to.at[1] - from.at[1]),
          ];
          const marks = one.plot.marks.map((each) =>
            each.id === mark ? { ...each, shape: { kind: "dot" as const, at } } : each,
          );
          const after = score({ ...one, plot: { ...one.plot, marks } }, { rubric: GIVEN });
          expect(after.detail.foundShare).toBeGreaterThanOrEqual(before.detail.foundShare - 1e-9);
        }
      },
      150,
    );
    expect(moved).toBeGreaterThan(15);
  });

  it("more marks of the best kind never lower F: stacked duplicates never raise it either", () => {
    check(
      scene,
      (one) => {
        const before = score(one, { rubric: GIVEN }).detail;
        const doubled = {
          ...one.plot,
          marks: one.plot.marks.flatMap((mark) => [mark, { ...mark, id: `${mark.id}-again` }]),
        };
        const after = score({ ...one, plot: doubled }, { rubric: GIVEN }).detail;
        expect(after.foundShare).toBeGreaterThanOrEqual(before.foundShare - 1e-9);
        expect(after.deduction).toBeGreaterThanOrEqual(before.deduction - 1e-9);
      },
      80,
    );
  });
});

const rubricOverrides: fc.Arbitrary<RubricOverrides> = fc.record(
  {
    orientation: fc.constantFrom("free" as const, "given" as const),
    otherView: fc.constantFrom(0, 0.5, 1),
    merged: fc.constantFrom(0, 0.4, 1),
    turnSupport: fc.integer({ min: 1, max: 4 }),
    wouldFitGain: fc.constantFrom(0, 20, 100),
    deductionCap: fc.constantFrom(0, 10, 100),
    shares: fc.constantFrom(
      { plot: 70, clarity: 20, otherGrades: 10 },
      { plot: 0, clarity: 90, otherGrades: 10 },
      { plot: 100, clarity: 0, otherGrades: 0 },
    ),
    gradeCredit: fc.constantFrom<number[]>([1], [1, 0.6, 0.2, 0], [0]),
  },
  { requiredKeys: [] },
);

describe("rule 9.6: whatever the input", () => {
  it("gives a result that its schema takes, from 0 to 100, with lines that add up, and the same each time", () => {
    check(
      fc.tuple(
        fc.record({ stone: body, reference: reference(6, { decoys: 3 }), plot: plot(12) }),
        rubricOverrides,
      ),
      ([one, overrides]) => {
        const rubric = resolveRubric(overrides);
        expect(
          ReferenceSchema.safeParse(one.reference).success && PlotSchema.safeParse(one.plot).success,
        ).toBe(true);
        const scored = score(one, { rubric });
        const parsed = ScoredPlotSchema.safeParse(scored);
        expect(parsed.error?.issues ?? []).toEqual([]);
        const { lines, total, found, strays, overlooked } = scored.result;
        const hundredths = lines.reduce((sum, { points }) => sum + Math.round(points * 100), 0);
        expect(hundredths).toBe(Math.round(total * 100));
        expect(strays.every(({ because }) => because.length > 0)).toBe(true);
        const accounted = new Set([...found, ...scored.detail.setAside, ...strays].map(({ mark }) => mark));
        expect([...accounted].sort()).toEqual(one.plot.marks.map(({ id }) => id).sort());
        const referred = new Set([...found.map(({ reference }) => reference), ...overlooked]);
        expect([...referred].sort()).toEqual(
          one.reference.marks
            .filter((mark) => !mark.optional)
            .map(({ id }) => id)
            .sort(),
        );
        expect(JSON.stringify(score({ ...one, reference: structuredClone(one.reference) }, { rubric }))).toBe(
          JSON.stringify(scored),
        );
      },
      120,
    );
  });

  it("keeps every point that it draws within reach of the stone", () => {
    check(
      scene,
      (one) => {
        const solid = getSolid(one.stone.cut, one.stone.proportions);
        for (const { points, view } of score(one).detail.strays) {
          for (const point of points) expect(isInsideOutline(solid, view, point, 0.6)).toBe(true);
        }
      },
      100,
    );
  });
});

it("uses the scales and the default rubric that the files describe", () => {
  expect(
    makeInput({ grades: { clarity: "SI1" }, marks: [], decoys: [] }, { grades: {}, marks: [] }),
  ).toMatchObject({
    rubric: DEFAULT_RUBRIC,
    scales: DEFAULT_SCALES,
  });
});
