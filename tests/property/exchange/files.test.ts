import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createSeededRandom } from "@/lib/base/seeded-random";
import { simulateSitting } from "@/lib/demo/simulate-sitting";
import { drawStudentSkill } from "@/lib/demo/student-skill";
import { readExerciseSet } from "@/lib/exchange/read-exercise-set";
import { readPlots } from "@/lib/exchange/read-plots";
import { writeExerciseSet } from "@/lib/exchange/write-exercise-set";
import { writePlots } from "@/lib/exchange/write-plots";
import type { PlotsFile } from "@/lib/plot/plots-file";
import { listExerciseSets } from "@/tests/support/list-exercise-sets";
import { listSimulatedStones } from "@/tests/support/list-simulated-stones";

const sets = listExerciseSets();
const stones = listSimulatedStones();

/** The same JSON value with the keys of every table in another order. */
function shuffleKeys(value: unknown, seed: number): unknown {
  const random = createSeededRandom(seed);
  const shuffle = (one: unknown): unknown => {
    if (Array.isArray(one)) return one.map(shuffle);
    if (typeof one !== "object" || one === null) return one;
    return Object.fromEntries(
      random.shuffle(Object.entries(one)).map(([key, inner]) => [key, shuffle(inner)]),
    );
  };
  return shuffle(value);
}

describe("a file of a set or of plots", () => {
  it("of a set is written as the same bytes, in whatever order its author wrote the keys", () => {
    fc.assert(
      fc.property(fc.constantFrom(...sets), fc.nat(), ({ text }, seed) => {
        const untidy = JSON.stringify(shuffleKeys(JSON.parse(text), seed));
        expect(writeExerciseSet(readExerciseSet(untidy).set)).toBe(text);
      }),
      { numRuns: 30 },
    );
  });

  it("of plots comes back as it was, and is written as the same bytes again", () => {
    fc.assert(
      fc.property(fc.constantFrom(...stones), fc.nat(), fc.nat(), (simulated, seed, order) => {
        const { plot } = simulateSitting(simulated, drawStudentSkill(createSeededRandom(seed)), seed);
        const file: PlotsFile = {
          format: "loupework/plots",
          version: 1,
          plots: [{ stone: simulated.stone.id, by: "somebody", ...plot }],
        };
        const resolved = sets.find(({ resolved: one }) =>
          one.set.stones.some(({ id }) => id === simulated.stone.id),
        )?.resolved;
        if (resolved === undefined) throw new Error("every stone is of a set");
        const text = writePlots(file);
        const read = readPlots(text, resolved);
        expect(read).toEqual(file);
        expect(writePlots(read)).toBe(text);
        const untidy = JSON.stringify(shuffleKeys(JSON.parse(text), order));
        expect(writePlots(readPlots(untidy, resolved))).toBe(text);
      }),
      { numRuns: 60 },
    );
  });
});
