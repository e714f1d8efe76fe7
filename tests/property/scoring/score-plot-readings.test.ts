/** What must always hold (lib/scoring/SPEC.md 9). A run that once failed keeps its seed in the list of its test. */
import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { getSolid } from "@/lib/gem/build-solid";
import { isInsideOutline } from "@/lib/gem/is-inside-outline";
import { DEFAULT_SCALES } from "@/lib/plot/grades";
import { PlotSchema } from "@/lib/plot/plots-file";
import { DEFAULT_RUBRIC, type RubricOverrides, resolveRubric } from "@/lib/plot/rubric";
import { ScoredPlotSchema } from "@/lib/plot/score-result";
import { ReferenceSchema } from "@/lib/plot/stone";
import { makeInput } from "@/tests/support/scoring/make-case";
import { body, check, GIVEN, plot, reference, scene, score } from "@/tests/support/scoring/scenes";

// A property scores hundreds of stones; on a busy machine that takes its time.
vi.setConfig({ testTimeout: 180_000 });

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
