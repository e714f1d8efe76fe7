import { describe, expect, it } from "vitest";
import { turnPoint } from "@/lib/gem/point";
import type { Plot } from "@/lib/plot/plots-file";
import { DEFAULT_RUBRIC, resolveRubric } from "@/lib/plot/rubric";
import { mapVertices } from "@/lib/plot/shape";
import type { Reference } from "@/lib/plot/stone";
import { prepareReference, rankStones, scorePlot } from "@/lib/scoring/score-plot";
import { makeInput, makePlot, makeReference } from "@/tests/support/scoring/make-case";

const EMPTY: Plot = { grades: {}, marks: [] };
const CLEAN: Reference = { grades: { clarity: "Loupe-clean" }, marks: [], decoys: [] };
const references = [...Array.from({ length: 12 }, (_, i) => makeReference(`tray ${i}`, 8)), CLEAN];
const tray = references.map((reference, i) =>
  prepareReference(makeInput(reference, EMPTY, { stoneId: `T-${i}` })),
);
const plotOf = (index: number, options = {}) =>
  makePlot(`tray ${index}`, references[index] as Reference, {
    overlooked: 0,
    confused: 0,
    behind: 0,
    scatter: 0.01,
    ...options,
  });

describe("the hand-in check (rule 8.3)", () => {
  it("names each stone of a tray from its own plot, turned too", () => {
    for (let i = 0; i < 12; i += 1) {
      const plot = plotOf(i);
      const marks = plot.marks.map((mark) => ({
        ...mark,
        shape: mapVertices(mark.shape, (point) => turnPoint(mark.view, point, 90)),
      }));
      const [best, next] = rankStones({ ...plot, marks }, tray, DEFAULT_RUBRIC);
      expect(best).toMatchObject({ stoneId: `T-${i}`, turnDeg: -90 });
      expect(best?.foundShare ?? 0).toBeGreaterThan((next?.foundShare ?? 1) + 0.25);
    }
  });

  it("names it from four marks of eight", () => {
    const plot = plotOf(5);
    expect(rankStones({ ...plot, marks: plot.marks.slice(0, 4) }, tray, DEFAULT_RUBRIC)[0]?.stoneId).toBe(
      "T-5",
    );
  });

  it("ranks nothing by an empty plot, and never a clean stone first (rule 8.1)", () => {
    expect(rankStones(EMPTY, tray, DEFAULT_RUBRIC).map(({ foundShare }) => foundShare)).toEqual(
      tray.map(() => 0),
    );
    expect(rankStones(plotOf(2), tray, DEFAULT_RUBRIC).at(-1)?.foundShare).toBeLessThan(0.5);
    expect(rankStones(plotOf(2), [], DEFAULT_RUBRIC)).toEqual([]);
  });

  it("does not depend on the order of the tray", () => {
    expect(rankStones(plotOf(4), [...tray].reverse(), DEFAULT_RUBRIC)).toEqual(
      rankStones(plotOf(4), tray, DEFAULT_RUBRIC),
    );
  });

  it("looks at the plot as drawn alone where the orientation is given", () => {
    const plot = plotOf(3);
    const marks = plot.marks.map((mark) => ({
      ...mark,
      shape: mapVertices(mark.shape, (point) => turnPoint(mark.view, point, 90)),
    }));
    const ranks = rankStones({ ...plot, marks }, tray, resolveRubric({ orientation: "given" }));
    expect(ranks.every(({ turnDeg }) => turnDeg === 0)).toBe(true);
    expect(ranks[0]?.foundShare ?? 1).toBeLessThan(0.6);
  });
});

describe("suspectStone (rule 8.2)", () => {
  const suspect = (on: number, plot: Plot) =>
    scorePlot(makeInput(references[on] as Reference, plot, { stoneId: `T-${on}`, tray })).result.suspectStone;

  it("names the stone that was swapped for this one, and none when it is this one", () => {
    expect(suspect(1, plotOf(7))).toBe("T-7");
    expect(suspect(7, plotOf(7))).toBeNull();
  });

  it("suspects a swap where a plot of marks is handed in for a clean stone, and none of an empty one", () => {
    expect(suspect(12, plotOf(7))).toBe("T-7");
    expect(suspect(12, EMPTY)).toBeNull();
    expect(suspect(3, EMPTY)).toBeNull();
  });

  it("wants an F of 0.6: a third of another stone's marks are not enough", () => {
    const plot = plotOf(7);
    expect(suspect(1, { ...plot, marks: plot.marks.slice(0, 2) })).toBeNull();
  });
});
