import { describe, expect, it } from "vitest";
import { computeAgreement } from "@/lib/agreement/compute-agreement";
import {
  OVERLOOKED_COLUMN,
  toCharacteristicConfusion,
  toGradeConfusion,
} from "@/lib/agreement/confusion-table";
import { type CountedPlot, countPlot } from "@/lib/agreement/count-plot";
import { NO_COUNTS, sumCounts } from "@/lib/agreement/counts";
import { deriveRates } from "@/lib/agreement/derive-rates";
import { deriveGradeCoefficients } from "@/lib/agreement/grade-agreement";
import { createSeededRandom } from "@/lib/base/seeded-random";
import { DEFAULT_SCALES, type PlotGrades } from "@/lib/plot/grades";
import type { Cause } from "@/lib/plot/mark";
import { SAMPLE_SCALE, toGradeCounts } from "@/tests/support/agreement/sample-counts";

const shape = { kind: "dot", at: [0, 0] } as const;
const dot = (id: string, characteristic: string, confidence?: number) => ({
  id,
  view: "crown" as const,
  characteristic,
  shape: { kind: shape.kind, at: [0, 0] as [number, number] },
  ...(confidence === undefined ? {} : { confidence }),
});

/** A plot in which `a` was found as a pinpoint, `b` overlooked, `c` set aside as optional, and `m2`, `m3` are strays. */
function makePlot(grades: PlotGrades): CountedPlot {
  const pair = { reference: "a", mark: "m1", value: 0.8, location: 1, type: 0.5, extent: 1 };
  const stray = (mark: string, cause: Cause) => ({ mark, cause, because: [] });
  return {
    reference: {
      grades: { clarity: "SI1", colour: "H" },
      marks: [dot("a", "crystal"), dot("b", "feather"), { ...dot("c", "cloud"), optional: true }],
    },
    plotted: {
      grades,
      marks: [
        dot("m1", "pinpoint", 4),
        dot("m2", "pinpoint"),
        dot("m3", "crystal", 2),
        dot("m4", "cloud", 5),
      ],
    },
    result: {
      total: 61.25,
      found: [pair],
      overlooked: ["b"],
      strays: [stray("m2", "dust"), stray("m3", "echo")],
    },
    scales: DEFAULT_SCALES,
  };
}

describe("counting one plot", () => {
  const counts = countPlot(makePlot({ clarity: "VS2" }));

  it("counts found, overlooked and strays by cause", () => {
    expect(counts).toMatchObject({
      plots: 1,
      hundredths: 6125,
      hundredthsSquared: 6125 ** 2,
      found: 1,
      overlooked: 1,
      strays: { dust: 1, echo: 1 },
      straysSquared: 4,
    });
  });

  it("counts characteristics, optional marks left out", () => {
    expect(counts.characteristics).toEqual({
      crystal: { reference: 1, found: 1, takenFor: { pinpoint: 1 }, strays: 1 },
      feather: { reference: 1, found: 0, takenFor: {}, strays: 0 },
      pinpoint: { reference: 0, found: 0, takenFor: {}, strays: 1 },
    });
  });

  it("counts grades that both sides gave; VS2 for SI1 is one step lenient", () => {
    expect(counts.grades).toEqual({
      clarity: {
        graded: 1,
        exact: 0,
        withinOne: 1,
        steps: -1,
        stepsSquared: 1,
        confusion: { SI1: { VS2: 1 } },
      },
    });
    expect(countPlot(makePlot({ clarity: "off the scale" })).grades).toEqual({});
  });

  it("counts confidences, a mark without any as 1", () => {
    expect(counts.freeResponse).toEqual({ found: [0, 0, 0, 1, 0], strays: [1, 1, 0, 0, 0] });
  });
});

describe("rates", () => {
  it("of nothing are all undefined", () => {
    const rates = deriveRates(NO_COUNTS, DEFAULT_SCALES);
    expect(rates).toMatchObject({
      plots: 0,
      meanTotal: { undefined: "no plot" },
      detection: { undefined: "no reference mark" },
      straysPerPlot: { undefined: "no plot" },
      characteristics: [],
      grades: {},
    });
    expect(rates.freeResponse[0]).toEqual({ confidence: 5, foundShare: null, straysPerPlot: null });
  });

  it("cumulate confidence from 5 down to 1", () => {
    const rates = deriveRates(countPlot(makePlot({})), DEFAULT_SCALES);
    expect(rates.freeResponse).toEqual([
      { confidence: 5, foundShare: 0, straysPerPlot: 0 },
      { confidence: 4, foundShare: 0.5, straysPerPlot: 0 },
      { confidence: 3, foundShare: 0.5, straysPerPlot: 0 },
      { confidence: 2, foundShare: 0.5, straysPerPlot: 1 },
      { confidence: 1, foundShare: 0.5, straysPerPlot: 2 },
    ]);
  });

  it("give each characteristic its detection, and how often it was named right", () => {
    const rates = deriveRates(countPlot(makePlot({})), DEFAULT_SCALES);
    expect(rates.characteristics.map((one) => one.characteristic)).toEqual([
      "crystal",
      "feather",
      "pinpoint",
    ]);
    expect(rates.characteristics[0]).toMatchObject({ detection: { value: 1 }, named: { value: 0 } });
    expect(rates.characteristics[1]).toMatchObject({
      detection: { value: 0 },
      named: { undefined: "none was found" },
    });
    expect(rates.characteristics[2]).toMatchObject({
      detection: { undefined: expect.any(String) },
      strays: 1,
    });
  });

  it("refuse a property without a scale, and grades that the scale lacks", () => {
    const counts = countPlot(makePlot({ clarity: "VS2" }));
    expect(() => deriveRates(counts, {})).toThrow(RangeError);
    expect(() => deriveRates(counts, { clarity: ["SI1"] })).toThrow(RangeError);
  });

  it("of grades equal those of the agreement command for the raters reference and plotted", () => {
    const random = createSeededRandom("same formulas");
    const pairs = Array.from({ length: 80 }, () => {
      const reference = random.int(4);
      return [reference, Math.max(0, Math.min(3, reference + random.int(3) - 1))] as const;
    });
    const ratings = pairs.flatMap(([reference, plotted], item) => [
      { item: `${item}`, rater: "reference", grade: SAMPLE_SCALE[reference] ?? "" },
      { item: `${item}`, rater: "plotted", grade: SAMPLE_SCALE[plotted] ?? "" },
    ]);
    const agreement = computeAgreement(ratings, SAMPLE_SCALE);
    const counts = toGradeCounts(pairs);
    const { clarity } = deriveRates(
      { ...NO_COUNTS, grades: { clarity: counts } },
      { clarity: SAMPLE_SCALE },
    ).grades;
    const { exact, withinOne, bias, kappa, fleiss, ac1, alpha } = agreement;
    expect(clarity).toMatchObject({ graded: 80, exact, withinOne, bias, kappa });
    const rest = deriveGradeCoefficients(counts, SAMPLE_SCALE);
    const close = (statistic: typeof fleiss) => {
      if ("undefined" in statistic) throw new Error(statistic.undefined);
      return {
        value: expect.closeTo(statistic.value, 12),
        low: expect.any(Number),
        high: expect.any(Number),
      };
    };
    expect(rest.fleiss).toEqual(close(fleiss));
    expect(rest.ac1).toEqual(close(ac1));
    for (const metric of ["nominal", "ordinal", "interval"] as const) {
      expect(rest.alpha[metric]).toEqual(close(alpha[metric]));
    }
  });

  it("of a section follow the formula of a single plot", () => {
    const one = countPlot(makePlot({ clarity: "SI1" }));
    const section = sumCounts([one, one, one, one]);
    const [single, whole] = [deriveRates(one, DEFAULT_SCALES), deriveRates(section, DEFAULT_SCALES)];
    expect(whole.detection).toMatchObject({ value: 0.5 });
    expect(single.detection).toMatchObject({ value: 0.5 });
    expect(whole.freeResponse).toEqual(single.freeResponse);
    expect(whole.meanTotal).toMatchObject({ value: 61.25 });
  });
});

describe("confusion tables", () => {
  it("lay grades out on the whole scale", () => {
    const table = toGradeConfusion({ VS2: { VS1: 2, VS2: 5 } }, ["VS1", "VS2", "SI1"]);
    expect(table.counts).toEqual([
      [0, 0, 0],
      [2, 5, 0],
      [0, 0, 0],
    ]);
    expect(table.rows).toEqual(["VS1", "VS2", "SI1"]);
  });

  it("refuse to lose a count", () => {
    expect(() => toGradeConfusion({ VS2: { XX: 1 } }, ["VS2"])).toThrow(RangeError);
    expect(() => toGradeConfusion({ XX: { VS2: 1 } }, ["VS2"])).toThrow(RangeError);
  });

  it("set characteristics against what they were taken for, and the overlooked last", () => {
    const table = toCharacteristicConfusion(
      {
        feather: { reference: 4, found: 3, takenFor: { feather: 2, "my-own": 1 } },
        crystal: { reference: 2, found: 2, takenFor: { pinpoint: 2 } },
        pit: { reference: 0, found: 0, takenFor: {} },
      },
      ["pinpoint", "crystal", "feather"],
    );
    expect(table).toEqual({
      rows: ["crystal", "feather"],
      columns: ["pinpoint", "feather", "my-own", OVERLOOKED_COLUMN],
      counts: [
        [2, 0, 0, 0],
        [0, 2, 1, 1],
      ],
    });
    expect(toCharacteristicConfusion({})).toEqual({ rows: [], columns: [OVERLOOKED_COLUMN], counts: [] });
  });
});
