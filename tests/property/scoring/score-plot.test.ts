/** What must always hold (lib/scoring/SPEC.md 9). A run that once failed keeps its seed in the list of its test. */
import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { createSeededRandom } from "@/lib/base/seeded-random";
import { getSolid } from "@/lib/gem/build-solid";
import { findSymmetryTurns } from "@/lib/gem/find-symmetry-turns";
import { DEFAULT_CHARACTERISTICS } from "@/lib/plot/characteristic";
import type { PlottedMark } from "@/lib/plot/mark";
import { listVertices } from "@/lib/plot/shape";
import type { Reference } from "@/lib/plot/stone";
import { prepareReference } from "@/lib/scoring/score-plot";
import { makeBody } from "@/tests/support/scoring/make-case";
import {
  body,
  check,
  copyPlot,
  plottedMark,
  reference,
  type Scene,
  scene,
  score,
  turnMarks,
  turnShape,
} from "@/tests/support/scoring/scenes";

// A property scores hundreds of stones; on a busy machine that takes its time.
vi.setConfig({ testTimeout: 180_000 });

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
