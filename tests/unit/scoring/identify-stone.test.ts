/** SPEC 8.4 to 8.7. The stones are the demo sets' own; what is in hand is drawn from their references, moved a little. */
import { describe, expect, it } from "vitest";
import { turnPoint } from "@/lib/gem/point";
import type { PlottedMark } from "@/lib/plot/mark";
import { DEFAULT_RUBRIC } from "@/lib/plot/rubric";
import { mapVertices } from "@/lib/plot/shape";
import { toReference } from "@/lib/plot/stone";
import type { StoneEvidence } from "@/lib/plot/stone-check";
import { identifyStone, prepareReference } from "@/lib/scoring/score-plot";
import { listExerciseSets } from "@/tests/support/list-exercise-sets";

const sets = listExerciseSets();
const stones = sets.flatMap(({ resolved }) => resolved.set.stones);
const tray = sets.flatMap(({ resolved }) =>
  resolved.set.stones.map((stone) =>
    prepareReference({
      stoneId: stone.id,
      stone,
      reference: toReference(stone),
      characteristics: resolved.characteristics,
    }),
  ),
);
const getStone = (label: string) => {
  const stone = stones.find(({ id }) => id === label);
  if (stone === undefined) throw new Error(`no stone ${label}`);
  return stone;
};

/** The first features of a stone, each 0.01 girdle widths off and the stone held turned. */
function see(label: string, count: number, over: Partial<StoneEvidence> = {}, turnDeg = 0): StoneEvidence {
  const marks = getStone(label)
    .marks.filter(({ optional }) => optional !== true)
    .slice(0, count)
    .map(({ id, view, characteristic, shape }): PlottedMark => {
      const moved = mapVertices(shape, ([x, y]) => turnPoint(view, [x + 0.007, y - 0.007], turnDeg));
      return { id, view, characteristic, shape: moved };
    });
  return { cut: "round-brilliant", marks, weightCt: null, isHeldByLandmark: false, ...over };
}
const ask = (evidence: StoneEvidence, expected: string | null) =>
  identifyStone(evidence, tray, DEFAULT_RUBRIC, expected);
const rich = stones.filter(({ marks }) => marks.filter(({ optional }) => optional !== true).length >= 3);

describe("the hand-in check", () => {
  it.each(rich.map(({ id }) => id))("names %s from three features, held turned or not", (label) => {
    for (const turnDeg of [0, 90]) {
      const verdict = ask(see(label, 3, {}, turnDeg), label);
      expect(verdict.ranks[0]).toMatchObject({ label, placed: 3 });
      expect(verdict.outcome).toBe("fits");
    }
  });

  it("does not hold a stone's many features against the few that were plotted (8.4)", () => {
    const label = rich.reduce((a, b) => (b.marks.length > a.marks.length ? b : a)).id;
    const verdict = ask(see(label, 2, { isHeldByLandmark: true }), label);
    expect(verdict.ranks[0]?.label).toBe(label);
    expect(verdict.ranks[0]?.fit).toBeGreaterThan(0.8);
  });

  it("contradicts the label of every stone that came back under another's (8.6)", () => {
    rich.forEach(({ id }, index) => {
      const wrong = rich[(index + 1) % rich.length]?.id ?? "";
      const verdict = ask(see(id, 3), wrong);
      expect(verdict.outcome, `${id} under the label ${wrong}`).not.toBe("fits");
      if (verdict.certainty === "clear") expect(verdict.outcome).toBe("other");
      const { weightCt = null } = getStone(id);
      const apart = Math.abs((weightCt ?? 0) - (getStone(wrong).weightCt ?? 0));
      if (apart >= 0.04) expect(ask(see(id, 3, { weightCt }), wrong).outcome).toBe("other");
    });
  });

  it("lets a weight rule a stone out, and says nothing by one that is not known (8.5)", () => {
    const own = getStone("A-03").weightCt ?? 0;
    const rank = (weightCt: number | null) =>
      ask(see("A-03", 3, { weightCt }), null).ranks.find(({ label }) => label === "A-03");
    expect(rank(own)).toMatchObject({ weightFit: 1 });
    expect(rank(own + 0.01)?.weightFit).toBeCloseTo(1);
    expect(rank(own + 0.025)?.weightFit).toBeCloseTo(0.5);
    expect(rank(own + 0.05)).toMatchObject({ weightFit: 0, fit: 0 });
    expect(rank(null)?.weightFit).toBeNull();
  });

  it("ranks only stones of the cut in hand, and nothing in an empty tray", () => {
    expect(ask(see("A-03", 3, { cut: "oval" }), "A-03")).toMatchObject({ ranks: [], outcome: "unsure" });
    expect(identifyStone(see("A-03", 3), [], DEFAULT_RUBRIC, null)).toMatchObject({
      ranks: [],
      outcome: null,
      certainty: "open",
    });
  });

  it("fits nothing where nothing of the tray was drawn, and does not doubt a label by one feature (8.6)", () => {
    const far = (count: number) =>
      see("A-03", 3, {
        isHeldByLandmark: true,
        marks: Array.from({ length: count }, (_, i) => ({
          id: `m${i}`,
          view: "crown" as const,
          characteristic: "burn-mark",
          shape: { kind: "dot" as const, at: [0.49 * Math.cos(1 + i / 9), 0.49 * Math.sin(1 + i / 9)] },
        })) as PlottedMark[],
      });
    expect(ask(far(1), "A-03").outcome).toBe("unsure");
    expect(ask(far(3), "A-03").certainty).toBe("open");
  });

  it("points at a feature that the one has and the other lacks, and at the scale (8.7)", () => {
    const { ranks, telling, weighing } = ask(see("A-04", 1), null);
    const pair = ranks.slice(0, 2).map(({ label }) => label);
    for (const one of telling) {
      expect([one.label, one.lackedBy].sort()).toEqual([...pair].sort());
      expect(getStone(one.label).marks.map(({ characteristic }) => characteristic)).toContain(
        one.characteristic,
      );
    }
    expect(telling.length).toBeGreaterThan(0);
    expect(weighing).toEqual(pair.map((label) => getStone(label).weightCt));
  });

  it("does not depend on the order of the tray or of the features", () => {
    const evidence = see("A-04", 3);
    const other = { ...evidence, marks: [...evidence.marks].reverse() };
    expect(identifyStone(other, [...tray].reverse(), DEFAULT_RUBRIC, "A-04")).toEqual(ask(evidence, "A-04"));
  });
});
