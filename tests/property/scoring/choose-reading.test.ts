/** The search skips readings that cannot win. Here every reading is worked out, and the same one must win. */
import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { turnPoint, VIEWS, type View } from "@/lib/gem/point";
import { findDottingBursts } from "@/lib/plot/find-dotting";
import { DEFAULT_RUBRIC, type Rubric, resolveRubric } from "@/lib/plot/rubric";
import { mapVertices } from "@/lib/plot/shape";
import { boundReadings } from "@/lib/scoring/bound-readings";
import { chooseReading } from "@/lib/scoring/choose-reading";
import { getDeduction, getPlotPoints, toHundredths } from "@/lib/scoring/count-points";
import { findCauses } from "@/lib/scoring/find-causes";
import { listPairs } from "@/lib/scoring/list-pairs";
import { matchMarks } from "@/lib/scoring/match-marks";
import { layPlot, preparePlot } from "@/lib/scoring/prepare-plot";
import { prepareReference } from "@/lib/scoring/prepare-reference";
import { layAlike, listSearchReadings, type Reading } from "@/lib/scoring/reading";
import { makeBody, makeInput, makePlot, makeReference } from "@/tests/support/scoring/make-case";

vi.setConfig({ testTimeout: 180_000 });

const GRADE_POINTS = 17.5;

const scene = fc
  .record({
    seed: fc.nat(),
    count: fc.integer({ min: 1, max: 12 }),
    strays: fc.constantFrom(0, 2, 20),
    scatter: fc.constantFrom(0.005, 0.03, 0.08),
    turnDeg: fc.constantFrom(0, 45, -135, 22.5, 37.5, 11),
    mirrored: fc.boolean(),
    // The view that was drawn so, or both.
    which: fc.constantFrom("both" as const, "both" as const, "crown" as const, "pavilion" as const),
    orientation: fc.constantFrom("free" as const, "given" as const),
    wouldFitGain: fc.constantFrom(0, 5, 20),
    cut: fc.constantFrom("round-brilliant" as const, "oval" as const),
  })
  .map(({ seed, count, strays, scatter, turnDeg, mirrored, which, orientation, wouldFitGain, cut }) => {
    const stone = makeBody(cut === "oval" ? { cut, proportions: { lengthToWidth: 1.3 } } : {});
    const reference = makeReference(`${seed}`, count, { optional: 0.2 });
    const drawn = makePlot(`${seed}`, reference, { strays, scatter });
    const marks = drawn.marks.map((mark) => ({
      ...mark,
      shape:
        which === "both" || which === mark.view
          ? mapVertices(mark.shape, ([x, y]) => turnPoint(mark.view, [mirrored ? -x : x, y], turnDeg))
          : mark.shape,
    }));
    const rubric = resolveRubric({ orientation, wouldFitGain });
    return {
      prepared: prepareReference(makeInput(reference, drawn, { stone })),
      plotted: preparePlot({ grades: {}, marks }),
      rubric,
    };
  });

type Scene = {
  prepared: ReturnType<typeof prepareReference>;
  plotted: ReturnType<typeof preparePlot>;
  rubric: Rubric;
};

function workOut({ prepared, plotted, rubric }: Scene, reading: Reading, laying = layAlike(reading)) {
  const laid = layPlot(plotted, laying);
  const matching = matchMarks(prepared, laid, listPairs(prepared, laid, rubric), rubric);
  const bursts = findDottingBursts(
    plotted.map(({ mark }) => mark),
    rubric.dust,
  );
  const strays = findCauses(prepared, laid, matching, bursts, rubric);
  const { deducted } = getDeduction(strays, rubric);
  const hundredths = toHundredths(getPlotPoints(matching.foundShare, deducted, rubric) + GRADE_POINTS);
  return { reading, laid, matching, deducted, hundredths };
}

/** How many marks of a view find a reference mark of a like kind well. */
function countOwnSupport({ matching, laid }: ReturnType<typeof workOut>, view: View): number {
  return [...matching.matched, ...matching.setAside].filter(
    ({ plotted, location, type }) => location >= 0.5 && type >= 0.5 && laid[plotted]?.mark.view === view,
  ).length;
}

/** The most that reading one view by itself can come to, every such reading worked out in full. */
function findBestOfOneView(one: Scene, counted: Reading): number {
  const { prepared, plotted, rubric } = one;
  const count = (view: View) => plotted.filter(({ mark }) => mark.view === view).length;
  const views = VIEWS.filter((view) => count(view) < plotted.length);
  const outcomes = views.flatMap((view) =>
    listSearchReadings(prepared.turns).flatMap((reading) => {
      const apart = Math.abs(reading.turnDeg - counted.turnDeg);
      if (!reading.mirrored && (apart < 15 || apart > 345)) return [];
      const outcome = workOut(one, reading, { ...layAlike(counted), [view]: reading });
      const own = countOwnSupport(outcome, view);
      const isMirrorOnly = reading.mirrored && reading.turnDeg === counted.turnDeg;
      const isSupported = own >= (isMirrorOnly ? 2 : rubric.turnSupport) && 2 * own >= count(view);
      return isSupported ? [outcome.hundredths] : [];
    }),
  );
  return Math.max(0, ...outcomes);
}

describe("the search (rules 3.2 to 3.5)", () => {
  it("gives what working out every reading gives", () => {
    let [turned, told, toldOfView] = [0, 0, 0];
    fc.assert(
      fc.property(scene, (one) => {
        const { prepared, plotted, rubric } = one;
        const bursts = findDottingBursts(
          plotted.map(({ mark }) => mark),
          rubric.dust,
        );
        const chosen = chooseReading({ prepared, plotted, bursts, rubric, gradePoints: GRADE_POINTS });
        const isSupported = ({ reading, matching }: ReturnType<typeof workOut>) =>
          (reading.turnDeg === 0 && !reading.mirrored) || matching.support >= rubric.turnSupport;
        const turns = rubric.orientation === "given" ? [0] : prepared.turns;
        const counted = turns
          .map((turnDeg) => workOut(one, { turnDeg, mirrored: false }))
          .filter(isSupported)
          .reduce((best, next) => (next.hundredths > best.hundredths ? next : best));
        expect(chosen.counted.reading).toEqual(counted.reading);
        expect(chosen.counted.hundredths).toBe(counted.hundredths);
        const best = Math.max(
          ...listSearchReadings(prepared.turns)
            .map((reading) => workOut(one, reading))
            .filter(isSupported)
            .map(({ hundredths }) => hundredths),
        );
        const gain = (best - counted.hundredths) / 100;
        expect(chosen.wouldFit?.gain ?? null).toEqual(gain > 0 && gain >= rubric.wouldFitGain ? gain : null);
        const ofView = (findBestOfOneView(one, counted.reading) - counted.hundredths) / 100;
        const isToldOfView = chosen.wouldFit === null && ofView > 0 && ofView >= rubric.wouldFitGain / 2;
        expect(chosen.viewFit?.gain ?? null).toEqual(isToldOfView ? ofView : null);
        if (isToldOfView) toldOfView += 1;
        if (counted.reading.turnDeg !== 0) turned += 1;
        if (chosen.wouldFit !== null) told += 1;
      }),
      { numRuns: 200, seed: 20_240 },
    );
    expect(Math.min(turned, told, toldOfView)).toBeGreaterThanOrEqual(3);
  });

  it("never bounds a reading below what it comes to", () => {
    fc.assert(
      fc.property(scene, (one) => {
        const bounds = boundReadings(one.prepared, one.plotted, true, one.rubric);
        for (const mirrored of [false, true]) {
          for (let turnDeg = -180; turnDeg < 180; turnDeg += 22.5) {
            const { matching, deducted } = workOut(one, { turnDeg, mirrored });
            const bound = bounds.ofLaying(layAlike({ turnDeg, mirrored }));
            expect(bound.foundShare).toBeGreaterThanOrEqual(matching.foundShare - 1e-9);
            expect(bound.deducted).toBeLessThanOrEqual(deducted + 1e-9);
            expect(bound.support).toBeGreaterThanOrEqual(matching.support);
            const asDrawn = { turnDeg: 0, mirrored: false };
            const laying = { crown: asDrawn, pavilion: { turnDeg, mirrored } };
            const apart = workOut(one, asDrawn, laying);
            const boundApart = bounds.ofLaying(laying);
            expect(boundApart.foundShare).toBeGreaterThanOrEqual(apart.matching.foundShare - 1e-9);
            expect(boundApart.deducted).toBeLessThanOrEqual(apart.deducted + 1e-9);
            expect(boundApart.support).toBeGreaterThanOrEqual(apart.matching.support);
            const reading = { turnDeg, mirrored };
            expect(bounds.ofSupportAlone("pavilion", reading)).toBeGreaterThanOrEqual(
              countOwnSupport(apart, "pavilion"),
            );
          }
        }
      }),
      { numRuns: 60, seed: 20_240 },
    );
  });

  it("bounds nothing for turns that lie between its steps, nor a side that was not asked for", () => {
    const reference = makeReference("between", 5);
    const plotted = preparePlot(makePlot("between", reference));
    const { ofLaying: getBound, ofSupportAlone } = boundReadings(
      prepareReference(makeInput(reference, { grades: {}, marks: [] })),
      plotted,
      false,
      DEFAULT_RUBRIC,
    );
    const unbounded = { foundShare: 1, deducted: 0, support: Number.POSITIVE_INFINITY };
    expect(getBound(layAlike({ turnDeg: 360 / 7, mirrored: false }))).toEqual(unbounded);
    expect(getBound(layAlike({ turnDeg: 0, mirrored: true }))).toEqual(unbounded);
    expect(ofSupportAlone("crown", { turnDeg: 0, mirrored: true })).toBe(Number.POSITIVE_INFINITY);
    expect(ofSupportAlone("crown", { turnDeg: 0, mirrored: false })).toBeLessThanOrEqual(5);
    expect(getBound(layAlike({ turnDeg: 0, mirrored: false })).foundShare).toBeLessThanOrEqual(1);
  });
});
