import { describe, expect, it } from "vitest";
import { countPlot } from "@/lib/agreement/count-plot";
import { NO_COUNTS, sumCounts } from "@/lib/agreement/counts";
import { CountsSchema } from "@/lib/agreement/counts-schema";
import { deriveRates } from "@/lib/agreement/derive-rates";
import { joinCounts } from "@/lib/agreement/join-counts";
import { DEFAULT_SCALES } from "@/lib/plot/grades";

const grade = (reference: string, plotted: string, scales = DEFAULT_SCALES) =>
  countPlot({
    reference: { grades: { clarity: reference }, marks: [] },
    plotted: { grades: { clarity: plotted }, marks: [] },
    result: { total: 50, found: [], overlooked: [], strays: [] },
    scales,
  });
const SHORT = { ...DEFAULT_SCALES, clarity: ["clean", "marked", "poor"] };

describe("joinCounts", () => {
  it("of counts on one scale is their sum", () => {
    const parts = [grade("VS1", "VS2"), grade("SI1", "SI1")];
    const joined = joinCounts(parts.map((counts) => ({ counts, scales: DEFAULT_SCALES })));
    expect(joined.counts).toEqual(sumCounts(parts));
    expect(joined.otherScale).toEqual({});
  });

  it("keeps the scale that most plots are graded on, says how many it left out, and can be derived from", () => {
    const joined = joinCounts([
      { counts: grade("clean", "poor", SHORT), scales: SHORT },
      { counts: sumCounts([grade("VS1", "VS2"), grade("SI1", "SI1")]), scales: DEFAULT_SCALES },
    ]);
    expect(joined.scales.clarity).toEqual(DEFAULT_SCALES.clarity);
    expect(joined.otherScale).toEqual({ clarity: 1 });
    expect(joined.counts.plots).toBe(3);
    const { grades } = deriveRates(joined.counts, joined.scales);
    expect(grades.clarity?.graded).toBe(2);
    expect(grades.clarity?.exact).toMatchObject({ value: 0.5 });
  });

  it("of nothing is nothing", () => {
    expect(joinCounts([])).toEqual({ counts: NO_COUNTS, scales: {}, otherScale: {} });
  });
});

describe("CountsSchema", () => {
  it("takes what countPlot gives, and refuses a count that is none", () => {
    expect(CountsSchema.parse(grade("VS1", "SI1"))).toEqual(grade("VS1", "SI1"));
    expect(CountsSchema.safeParse({ ...NO_COUNTS, plots: -1 }).success).toBe(false);
    expect(CountsSchema.safeParse({ ...NO_COUNTS, found: 0.5 }).success).toBe(false);
  });
});
