import { describe, expect, it } from "vitest";
import { buildCharacteristicTable, DEFAULT_CHARACTERISTICS, LIKE_PAIRS } from "@/lib/plot/characteristic";
import { DEFAULT_RUBRIC } from "@/lib/plot/rubric";
import { rateExtent, rateLikeness, rateLocation, rateType } from "@/lib/scoring/rate-pair";

describe("location (rule 2.1)", () => {
  it("is 1 up to near, falls in a straight line, and is 0 from far on", () => {
    const rate = (distance: number) => rateLocation(distance, DEFAULT_RUBRIC);
    expect([0, 0.03, 0.065, 0.1, 0.5].map(rate)).toEqual([1, 1, expect.closeTo(0.5, 12), 0, 0]);
    expect(rate(0.03 + 1e-9)).toBeLessThan(1);
  });
});

describe("type (rule 2.2)", () => {
  it("is 1 for the same, 0.5 for each of the 21 like pairs both ways round, else 0", () => {
    const rate = (a: string, b: string) => rateType(a, b, DEFAULT_CHARACTERISTICS);
    expect(LIKE_PAIRS).toHaveLength(21);
    for (const [a, b] of LIKE_PAIRS) expect([rate(a, b), rate(b, a), rate(a, a)]).toEqual([0.5, 0.5, 1]);
    expect(rate("crystal", "cloud")).toBe(0);
    expect(rate("needle", "pinpoint")).toBe(0);
  });

  it("knows what a set adds", () => {
    const table = buildCharacteristicTable([{ name: "gas-bubble", class: "inside", like: ["crystal"] }]);
    expect(rateType("crystal", "gas-bubble", table)).toBe(0.5);
    expect(rateType("gas-bubble", "pinpoint", table)).toBe(0);
  });
});

describe("extent and value (rules 2.3, 2.4)", () => {
  it("falls with the ratio either way and is 0 from four times on", () => {
    const rate = (reference: number, plotted: number) => rateExtent(Math.log(reference), Math.log(plotted));
    expect(rate(0.1, 0.1)).toBe(1);
    expect(rate(0.1, 0.2)).toBeCloseTo(0.5, 12);
    expect(rate(0.2, 0.1)).toBeCloseTo(0.5, 12);
    expect(rate(0.1, 0.4)).toBeCloseTo(0, 12);
    expect(rate(0.1, 0.9)).toBe(0);
  });

  it("weighs the parts 0.50, 0.35 and 0.15", () => {
    expect(rateLikeness(1, 1, DEFAULT_RUBRIC)).toBe(1);
    expect(rateLikeness(0.5, 0.5, DEFAULT_RUBRIC)).toBeCloseTo(0.75, 12);
    expect(rateLikeness(0, 0, DEFAULT_RUBRIC)).toBe(0.5);
  });
});
