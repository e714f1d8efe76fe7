/** The default rule on simulated streams; the figures themselves come from `npm run bench dotting`. */
import { describe, expect, it } from "vitest";
import { createSeededRandom } from "@/lib/base/seeded-random";
import { simulateSitting } from "@/lib/demo/simulate-sitting";
import { MIDDLING_SKILL } from "@/lib/demo/student-skill";
import { DEFAULT_RULES } from "@/lib/plot/exercise-rules";
import { findBurstUnderWay, findLoggedBursts } from "@/lib/plot/find-dotting";
import type { SittingEvent } from "@/lib/plot/sitting-event";
import { listSimulatedStones } from "@/tests/support/list-simulated-stones";
import { simulateDustDots, simulateHonestDots } from "@/tests/support/simulate-dot-stream";

const RULE = DEFAULT_RULES.dotting;
const STREAMS = 300;
const seeds = Array.from({ length: STREAMS }, (_, i) => `stream/${i}`);

describe("the default rule", () => {
  it("is silent on honest groups of dots drawn with a look between them", () => {
    const noted = seeds.filter((seed) => {
      const dots = simulateHonestDots(createSeededRandom(seed), { medianS: 2.5, spread: 0.4 });
      return dots.some((_, i) => findBurstUnderWay(dots.slice(0, i + 1), RULE) !== null);
    });
    expect(noted).toEqual([]);
  });

  it("hears nearly all quick dust, never before the sixth dot", () => {
    const firsts = seeds.map((seed) => {
      const dots = simulateDustDots(createSeededRandom(seed), { medianS: 0.5, spread: 0.4 });
      return dots.findIndex((_, i) => findBurstUnderWay(dots.slice(0, i + 1), RULE) !== null) + 1;
    });
    const heard = firsts.filter((count) => count > 0);
    expect(heard.length).toBeGreaterThan(0.97 * STREAMS);
    expect(Math.min(...heard)).toBe(RULE.burstDots);
  });
});

describe("bursts of a whole log", () => {
  it("are in the log of somebody who does not clean, and in none of somebody who does", () => {
    const [simulated] = listSimulatedStones();
    if (simulated === undefined) throw new Error("no stones");
    const count = (wiping: number) =>
      seeds.slice(0, 60).filter((seed) => {
        const skill = { ...MIDDLING_SKILL, wiping, dustBurstsPerPlot: 2 };
        return findLoggedBursts(simulateSitting(simulated, skill, seed).events, RULE).length > 0;
      }).length;
    expect(count(1)).toBe(0);
    expect(count(0)).toBeGreaterThan(40);
  });

  it("hold dots that were taken away later", () => {
    const put = (seq: number): SittingEvent => ({
      seq,
      atMs: seq * 500,
      kind: "marks",
      put: [{ id: `m${seq}`, view: "crown", characteristic: "pinpoint", shape: { kind: "dot", at: [0, 0] } }],
      removed: [],
    });
    const events: SittingEvent[] = [1, 2, 3, 4, 5, 6].map(put);
    events.push({ seq: 7, atMs: 9000, kind: "marks", put: [], removed: ["m1", "m2", "m3"] });
    expect(findLoggedBursts(events, RULE)).toEqual([
      { dots: ["m1", "m2", "m3", "m4", "m5", "m6"], fromMs: 500, toMs: 3000 },
    ]);
  });
});
