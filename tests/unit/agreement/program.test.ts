/** Sections, terms and instructors side by side, stones that mislead, and readers: the pure parts of the program's report. */
import { describe, expect, it } from "vitest";
import { buildProgramGroup, groupSections, toMeasureClusters } from "@/lib/agreement/build-program-groups";
import { type Counts, NO_COUNTS, sumCounts } from "@/lib/agreement/counts";
import { computeFunnelLimits, placeInFunnel } from "@/lib/agreement/funnel-limits";
import { judgeStone } from "@/lib/agreement/judge-stone";
import { computePooledDesignEffect } from "@/lib/agreement/pooled-design-effect";
import type { SectionSummary } from "@/lib/agreement/program-report";
import {
  computeReaderAgreement,
  listReaderReasons,
  type ReadingPair,
} from "@/lib/agreement/reader-agreement";
import { isDefined } from "@/lib/agreement/statistic";
import { createSeededRandom } from "@/lib/base/seeded-random";

const SCALE = ["A", "B", "C", "D"];
const SCALES = { clarity: SCALE };

function count(found: number, overlooked: number, more: Partial<Counts> = {}): Counts {
  return { ...NO_COUNTS, plots: 1, found, overlooked, ...more };
}

function makeSection(
  id: string,
  students: readonly Counts[],
  more: Partial<SectionSummary> = {},
): SectionSummary {
  const clusters = students.map(toMeasureClusters);
  return {
    sectionId: id,
    name: id,
    term: "Spring",
    instructors: [{ id: "i1", name: "One" }],
    beganAt: "2026-01-01T00:00:00.000Z",
    students: students.length,
    whole: { counts: sumCounts(students), scales: SCALES, otherScale: {} },
    clusters: {
      found: clusters.map(({ found }) => found),
      exact: clusters.map(({ exact }) => exact),
      "within-one": clusters.map((own) => own["within-one"]),
    },
    stones: new Map(),
    ...more,
  };
}

describe("groups of a program", () => {
  it("add up from counts: a term's share is that of all of its marks, not the mean of its sections", () => {
    const sections = [makeSection("s1", [count(9, 1), count(8, 2)]), makeSection("s2", [count(1, 1)])];
    const [term] = groupSections(sections, SCALES, ({ term: key }) => [{ key, label: key }]);
    expect(term?.shares.found).toMatchObject({ hits: 18, trials: 22 });
    expect(term?.shares.found.share).toMatchObject({ value: expect.closeTo(18 / 22, 12) });
    expect([term?.sections, term?.students, term?.plots]).toEqual([2, 3, 3]);
  });

  it("a section that two teach counts for both", () => {
    const both = [
      { id: "i1", name: "One" },
      { id: "i2", name: "Two" },
    ];
    const sections = [
      makeSection("s1", [count(5, 5)], { instructors: both }),
      makeSection("s2", [count(1, 0)]),
    ];
    const groups = groupSections(sections, SCALES, ({ instructors }) =>
      instructors.map(({ id, name }) => ({ key: id, label: name })),
    );
    expect(groups.map(({ key, plots }) => [key, plots])).toEqual([
      ["i1", 2],
      ["i2", 1],
    ]);
  });

  it("of nothing say why there is no figure", () => {
    const none = buildProgramGroup({ key: "k", label: "K" }, [], SCALES);
    expect(none.plots).toBe(0);
    expect(none.shares.found.share).toEqual({ undefined: "no reference mark was there to be found" });
    expect(none.shares.exact.share).toEqual({ undefined: "no clarity grade was given" });
    expect(isDefined(none.bias)).toBe(false);
  });
});

describe("the pooled design effect", () => {
  it("is 1 for clusters of one trial, and for no clusters", () => {
    const ones = Array.from({ length: 50 }, (_, i) => ({ hits: i % 2, trials: 1 }));
    // n / (n - 1) of the linearised variance is all that is left.
    expect(computePooledDesignEffect([ones])).toBeCloseTo(50 / 49, 12);
    expect(computePooledDesignEffect([])).toBe(1);
  });

  it("is the size of the clusters where all of a cluster's trials are the same", () => {
    const same = Array.from({ length: 40 }, (_, i) => ({ hits: i % 2 === 0 ? 10 : 0, trials: 10 }));
    expect(computePooledDesignEffect([same])).toBeCloseTo((40 / 39) * 10, 10);
  });

  it("does not take a difference between groups for likeness within", () => {
    const random = createSeededRandom("design effect");
    const group = (share: number) =>
      Array.from({ length: 400 }, () => ({
        hits: Array.from({ length: 10 }, () => random.chance(share)).filter(Boolean).length,
        trials: 10,
      }));
    expect(computePooledDesignEffect([group(0.2), group(0.8)])).toBeLessThan(1.15);
  });
});

describe("a funnel that knows that one student's marks are alike", () => {
  it("leaves about one section in twenty outside where sections differ by chance alone", () => {
    const random = createSeededRandom("funnel");
    // Every student has a chance of their own; sections are drawn from one and the same crowd.
    const sections = Array.from({ length: 400 }, () =>
      Array.from({ length: 5 + random.int(25) }, () => {
        const own = 0.2 + 0.6 * random.next();
        return {
          hits: Array.from({ length: 20 }, () => random.chance(own)).filter(Boolean).length,
          trials: 20,
        };
      }),
    );
    const effect = computePooledDesignEffect(sections);
    const sum = (key: "hits" | "trials", own: (typeof sections)[number]) =>
      own.reduce((total, one) => total + one[key], 0);
    const common = sum("hits", sections.flat()) / sum("trials", sections.flat());
    const outside = (designEffect: number) =>
      sections.filter(
        (own) => placeInFunnel(sum("hits", own), sum("trials", own), common, designEffect) !== "within",
      ).length / sections.length;
    expect(effect).toBeGreaterThan(2);
    expect(outside(effect)).toBeLessThan(0.08);
    expect(outside(effect)).toBeGreaterThan(0.02);
    // Trials taken as independent would have named one section in five or more for nothing.
    expect(outside(1)).toBeGreaterThan(0.2);
  });

  it("widens its limits by the root of the design effect", () => {
    const { low, high } = computeFunnelLimits(0.5, 100, 4);
    expect(high - 0.5).toBeCloseTo(2 * (computeFunnelLimits(0.5, 100).high - 0.5), 12);
    expect(0.5 - low).toBeCloseTo(high - 0.5, 12);
    expect(() => computeFunnelLimits(0.5, 100, 0.5)).toThrow(RangeError);
  });
});

describe("a stone that misleads", () => {
  const ground = { found: 0.7, seemingPerPlot: 0.5, designEffect: 2, stones: 60 };
  const stone = (found: number, overlooked: number, strays: Counts["strays"], plots = 40): Counts => ({
    ...NO_COUNTS,
    plots,
    found,
    overlooked,
    strays,
  });

  it("is named where its marks are found far less often, or strays that only seem something pile up", () => {
    expect(judgeStone(stone(60, 140, { unexplained: 20 }), ground).reasons).toEqual([
      "30 % of its marks are found; of all stones' 70 %.",
    ]);
    expect(judgeStone(stone(140, 60, { echo: 60, glint: 10, unexplained: 10 }), ground).reasons).toEqual([
      "2.0 echoes, glints and unexplained strays on a plot; of all stones 0.5.",
    ]);
  });

  it("is not named for dust or doubles, for chance, or for a few plots", () => {
    expect(judgeStone(stone(140, 60, { dust: 200, double: 40 }), ground).reasons).toEqual([]);
    expect(judgeStone(stone(140, 60, { unexplained: 26 }), ground).reasons).toEqual([]);
    expect(judgeStone(stone(1, 34, { unexplained: 40 }, 7), ground).reasons).toEqual([]);
    expect(judgeStone(NO_COUNTS, ground)).toMatchObject({
      seemingPerPlot: null,
      reasons: [],
      found: { undefined: "no reference mark" },
    });
  });
});

describe("agreement of second readers", () => {
  const pair = (id: string, more: Partial<ReadingPair["figures"]>, steps = 0): ReadingPair => ({
    readingId: id,
    stoneId: `stone of ${id}`,
    first: "One",
    second: "Two",
    scale: SCALE,
    figures: {
      first: 5,
      second: 5,
      matched: 5,
      named: 4,
      secondByFirst: 1,
      firstBySecond: 1,
      ospa: 0,
      gospa: 0,
      turnDeg: 0,
      grades: [{ property: "clarity", first: "B", second: SCALE[1 + steps] ?? "B", steps }],
      ...more,
    },
  });

  it("counts marks in common of all that either has, and clarity by the functions of the agreement command", () => {
    const agreement = computeReaderAgreement([
      pair("r1", {}),
      pair("r2", { first: 6, second: 4, matched: 3, named: 3 }, 1),
      pair("r3", {}, 0),
    ]);
    expect(agreement.inCommon).toMatchObject({ value: expect.closeTo(13 / 17, 12) });
    expect(agreement.named).toMatchObject({ value: expect.closeTo(11 / 13, 12) });
    expect(agreement.clarity.exact).toMatchObject({ value: expect.closeTo(2 / 3, 12) });
    expect(agreement.clarity.bias).toMatchObject({ value: expect.closeTo(1 / 3, 12) });
    expect(agreement.pairs).toMatchObject([
      { first: "One", second: "Two", readings: 3, graded: 3, exact: 2 },
    ]);
  });

  it("of no reading, and of one, says why there is no figure", () => {
    const none = computeReaderAgreement([]);
    expect(none.inCommon).toEqual({ undefined: "nobody has handed a second reading in" });
    expect(isDefined(none.clarity.kappa.quadratic)).toBe(false);
    const one = computeReaderAgreement([pair("r1", {})]);
    expect(one.inCommon).toEqual({
      undefined: "all of it comes from one source, so its spread cannot be told",
    });
  });

  it("leaves clarity on another scale out and counts it", () => {
    const other = { ...pair("r3", { grades: [] }), scale: ["good", "bad"] };
    const agreement = computeReaderAgreement([pair("r1", {}), pair("r2", {}), other]);
    expect([agreement.readings, agreement.clarity.items, agreement.otherScale]).toEqual([3, 2, 1]);
  });

  it("names what two readers disagree on", () => {
    expect(listReaderReasons(pair("r1", {}))).toEqual([]);
    expect(listReaderReasons(pair("r1", { matched: 2, named: 2 }, 2))).toEqual([
      "Its second reader has 2 of 8 marks in common with the reference.",
      "Its second reader gives D, the reference B.",
    ]);
  });
});
