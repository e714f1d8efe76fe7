import { describe, expect, it } from "vitest";
import { toTimeLeftWords, toTimeWarning } from "@/components/bench/to-time-left-words";

describe("what is left of a timed stone", () => {
  it("is told in minutes and seconds, with hours where there are any", () => {
    expect(toTimeLeftWords(725_000)).toBe("12:05 left");
    expect(toTimeLeftWords(3_725_000)).toBe("1:02:05 left");
    expect(toTimeLeftWords(400)).toBe("0:01 left");
    expect(toTimeLeftWords(0)).toBe("Time is up");
  });

  it("is said aloud from five minutes and from one, and is true at any moment in between", () => {
    expect(toTimeWarning(300_001)).toBeNull();
    expect(toTimeWarning(300_000)).toBe(toTimeWarning(120_000));
    expect(toTimeWarning(120_000)).toContain("or less");
    expect(toTimeWarning(60_000)).toBe(toTimeWarning(1));
    expect(toTimeWarning(60_000)).not.toBe(toTimeWarning(60_001));
    expect(toTimeWarning(0)).toContain("time is up");
  });
});
