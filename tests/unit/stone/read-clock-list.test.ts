import { describe, expect, it } from "vitest";
import { readClockList, toClockText } from "@/components/stone/read-clock-list";

describe("readClockList", () => {
  it("reads clock times and degrees, parted by commas, semicolons or blanks", () => {
    expect(readClockList("1:30, 4:30;7:30 285°").clockDegs).toEqual([45, 135, 225, 285]);
  });

  it("takes 12 o'clock for 0 degrees and a blank before the degree sign for none", () => {
    expect(readClockList("12:00 90 °").clockDegs).toEqual([0, 90]);
  });

  it("names what is no position and keeps the rest", () => {
    expect(readClockList("1:30, 13:00, 4:75, 360, top")).toEqual({
      clockDegs: [45],
      unread: ["13:00", "4:75", "360", "top"],
    });
  });

  it("gives nothing for an empty text", () => {
    expect(readClockList("  ")).toEqual({ clockDegs: [], unread: [] });
  });

  it("is the inverse of toClockText for every half degree", () => {
    for (let deg = 0; deg < 360; deg += 0.5) {
      expect(readClockList(toClockText(deg)).clockDegs).toEqual([deg]);
    }
  });

  it("writes what falls on no whole minute as degrees, and a turn too far as its place", () => {
    expect(toClockText(33.3)).toBe("33.3°");
    expect(toClockText(-45)).toBe("10:30");
    expect(toClockText(405)).toBe("1:30");
  });
});
