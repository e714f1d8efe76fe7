/**
 * Streams of dots with their times, for asking how often dotting is noted and how soon. Besides the demo's own model
 * of whole sittings, which is kind to the rule (its dust comes faster than the rule's gap by construction, its careful
 * students slower), two that are not: an honest student who draws what lies close together one dot after another, and
 * dust whose gaps straggle over the rule's. Invented, and fitted to no data.
 */
import type { SeededRandom } from "@/lib/base/seeded-random";
import type { PlottedMark } from "@/lib/plot/mark";

export type TimedDot = Pick<PlottedMark, "id" | "shape" | "atMs">;

/** So much time goes by between two dots: log-normal about a median, seconds. */
export interface Gaps {
  readonly medianS: number;
  readonly spread: number;
}

const drawGapMs = (random: SeededRandom, { medianS, spread }: Gaps) =>
  1000 * medianS * Math.exp(random.normal(0, spread));

const dotAt = (index: number, atMs: number): TimedDot => ({
  id: `m${index + 1}`,
  shape: { kind: "dot", at: [0, 0] },
  atMs: Math.round(atMs),
});

/** An honest sitting: groups of 1 to 9 dots that lie close together, a look through the loupe before each group. */
export function simulateHonestDots(random: SeededRandom, within: Gaps): TimedDot[] {
  const dots: TimedDot[] = [];
  let nowMs = 0;
  const groups = 2 + random.int(5);
  for (let group = 0; group < groups; group += 1) {
    nowMs += drawGapMs(random, { medianS: 20, spread: 0.5 });
    const count = 1 + random.int(9);
    for (let one = 0; one < count; one += 1) {
      if (one > 0) nowMs += drawGapMs(random, within);
      dots.push(dotAt(dots.length, nowMs));
    }
  }
  return dots;
}

/** One run of dust: 6 to 14 dots one after another. */
export function simulateDustDots(random: SeededRandom, within: Gaps): TimedDot[] {
  const count = 6 + random.int(9);
  let nowMs = 0;
  return Array.from({ length: count }, (_, index) => {
    if (index > 0) nowMs += drawGapMs(random, within);
    return dotAt(index, nowMs);
  });
}
