import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createSeededRandom } from "@/lib/base/seeded-random";
import { simulateSitting } from "@/lib/demo/simulate-sitting";
import { drawStudentSkill } from "@/lib/demo/student-skill";
import { findPlotFaults } from "@/lib/plot/find-plot-faults";
import { PlotSchema } from "@/lib/plot/plots-file";
import { rebuildSitting, SittingEventSchema } from "@/lib/plot/sitting-event";
import { listSimulatedStones } from "@/tests/support/list-simulated-stones";

const stones = listSimulatedStones();
const sitting = fc
  .record({ simulated: fc.constantFrom(...stones), seed: fc.nat() })
  .map(({ simulated, seed }) => ({
    simulated,
    seed,
    made: simulateSitting(simulated, drawStudentSkill(createSeededRandom(seed)), seed),
  }));

describe("any simulated sitting", () => {
  it("makes a plot that the program would take", () => {
    fc.assert(
      fc.property(sitting, ({ simulated, made }) => {
        expect(PlotSchema.parse(made.plot)).toEqual(made.plot);
        expect(findPlotFaults(made.plot, simulated.solid, simulated)).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  it("has a log without gaps, in time, that rebuilds the plot", () => {
    fc.assert(
      fc.property(sitting, ({ made }) => {
        made.events.forEach((event, index) => {
          expect(SittingEventSchema.parse(event)).toEqual(event);
          expect(event.seq).toBe(index + 1);
          expect(event.atMs).toBeGreaterThanOrEqual(made.events[index - 1]?.atMs ?? 0);
          expect(event.atMs).toBeLessThanOrEqual(made.handedInAtMs);
        });
        expect(rebuildSitting(made.events).plot).toEqual(made.plot);
      }),
      { numRuns: 300 },
    );
  });

  it("accounts for every plotted mark once and for every feature of the reference", () => {
    fc.assert(
      fc.property(sitting, ({ simulated, made: { plot, truth } }) => {
        expect(truth.origins.map(({ mark }) => mark)).toEqual(plot.marks.map(({ id }) => id));
        const drawn = truth.origins.flatMap(({ origin }) => {
          if (origin.kind === "merged") return origin.references;
          return origin.kind === "feature" ? [origin.reference] : [];
        });
        const missed = truth.missed.map(({ reference }) => reference);
        expect(new Set(drawn).size).toBe(drawn.length);
        expect([...drawn, ...missed].sort()).toEqual(simulated.stone.marks.map(({ id }) => id).sort());
      }),
      { numRuns: 300 },
    );
  });

  it("is the same for the same seed", () => {
    fc.assert(
      fc.property(sitting, ({ simulated, seed, made }) => {
        const again = simulateSitting(simulated, drawStudentSkill(createSeededRandom(seed)), seed);
        expect(JSON.stringify(again)).toBe(JSON.stringify(made));
      }),
      { numRuns: 50 },
    );
  });
});
