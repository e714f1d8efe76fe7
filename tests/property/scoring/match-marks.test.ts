/** The assignment of whole plots against brute force, on crowded stones where greedy matching goes wrong (rule 9.7). */
import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { DEFAULT_RUBRIC } from "@/lib/plot/rubric";
import { listPairs } from "@/lib/scoring/list-pairs";
import { matchMarks } from "@/lib/scoring/match-marks";
import { preparePlot } from "@/lib/scoring/prepare-plot";
import { prepareReference } from "@/lib/scoring/prepare-reference";
import { maximiseByTrial } from "@/tests/support/scoring/brute-force";
import { makeInput, makePlot, makeReference } from "@/tests/support/scoring/make-case";

vi.setConfig({ testTimeout: 180_000 });

const scene = fc.record({
  seed: fc.nat(),
  count: fc.integer({ min: 0, max: 6 }),
  strays: fc.integer({ min: 0, max: 3 }),
});

describe("the assignment of a plot", () => {
  it("adds up to the most that trying everything finds", () => {
    let beatsGreedy = 0;
    fc.assert(
      fc.property(scene, ({ seed, count, strays }) => {
        // All within a small part of the stone, so that nearly every mark could be any other; no outline, so no merge.
        const reference = makeReference(`crowd ${seed}`, count, { radius: 0.08 });
        const drawn = makePlot(`crowd ${seed}`, reference, { scatter: 0.05, strays });
        const marks = drawn.marks.filter((mark) => mark.shape.kind !== "outline");
        const prepared = prepareReference(makeInput(reference, drawn));
        const plotted = preparePlot({ grades: {}, marks });
        const pairs = listPairs(prepared, plotted, DEFAULT_RUBRIC);
        const { foundShare, matched } = matchMarks(prepared, plotted, pairs, DEFAULT_RUBRIC);
        const gains = prepared.marks.map(({ weight }, reference) =>
          plotted.map(
            (_, index) =>
              weight *
              (pairs.find((pair) => pair.reference === reference && pair.plotted === index)?.value ?? 0),
          ),
        );
        const best = prepared.weightSum > 0 ? maximiseByTrial(gains) / prepared.weightSum : 1;
        expect(foundShare).toBeCloseTo(best, 8);
        expect(new Set(matched.map((pair) => pair.plotted)).size).toBe(matched.length);
        const greedy = [...pairs]
          .sort(
            (a, b) =>
              (prepared.marks[b.reference]?.weight ?? 0) * b.value -
              (prepared.marks[a.reference]?.weight ?? 0) * a.value,
          )
          .reduce(
            ({ sum, used }, { reference, plotted, value }) =>
              used.has(`r${reference}`) || used.has(`p${plotted}`)
                ? { sum, used }
                : {
                    sum: sum + (prepared.marks[reference]?.weight ?? 0) * value,
                    used: used.add(`r${reference}`).add(`p${plotted}`),
                  },
            { sum: 0, used: new Set<string>() },
          ).sum;
        if (prepared.weightSum > 0 && greedy / prepared.weightSum < foundShare - 1e-6) beatsGreedy += 1;
      }),
      { numRuns: 400, seed: 20_240 },
    );
    expect(beatsGreedy).toBeGreaterThan(5);
  });
});
