/** Counting what a rescore changes. */
import { describe, expect, it } from "vitest";
import { compareChanges, summariseRescore, toSignedPoints } from "@/lib/plot/rescore";

const change = (before: number, after: number) => ({ before, after });

describe("summariseRescore", () => {
  it("counts what goes up, down and stays, with the mean over all and the farthest change", () => {
    expect(summariseRescore([change(5000, 5000), change(7000, 6400), change(100, 400)])).toEqual({
      changed: 2,
      unchanged: 1,
      up: 1,
      down: 1,
      meanHundredths: -100,
      largestHundredths: -600,
    });
  });

  it("names the loss where a gain is as large, in whatever order they come", () => {
    const both = [change(0, 300), change(300, 0)];
    expect(summariseRescore(both).largestHundredths).toBe(-300);
    expect(summariseRescore(both.toReversed()).largestHundredths).toBe(-300);
  });

  it("gives noughts for nothing to rescore", () => {
    expect(summariseRescore([])).toEqual({
      changed: 0,
      unchanged: 0,
      up: 0,
      down: 0,
      meanHundredths: 0,
      largestHundredths: 0,
    });
  });
});

describe("compareChanges", () => {
  it("puts the biggest first, and of two as big the loss", () => {
    const [a, b, c] = [change(0, 100), change(500, 200), change(200, 500)];
    expect([a, c, b].toSorted(compareChanges)).toEqual([b, c, a]);
  });
});

describe("toSignedPoints", () => {
  it("writes hundredths as points with their sign", () => {
    expect([125, -50, 0, -0].map(toSignedPoints)).toEqual(["+1.25", "−0.50", "0.00", "0.00"]);
  });
});
