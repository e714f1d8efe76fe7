import { describe, expect, it } from "vitest";
import { getSetLikeness, measureSetDistance, type Place } from "@/lib/scoring/measure-set-distance";

/** The worked values of check-values 5.4: OSPA as spatstat's pppdist gives it; GOSPA of B, C, D as published. */
const R: Place[] = [
  [2, 2],
  [4, 5],
  [7, 4],
];
const SETS: Record<string, Place[]> = {
  A: R,
  B: [
    [2, 2],
    [4, 5],
  ],
  C: [...R, [0, 9]],
  D: [
    [2, 3],
    [4, 5],
    [7, 4],
  ],
  E: [
    [2.5, 2],
    [4, 5.3],
    [9.9, 9.9],
  ],
  F: [
    [2.5, 2],
    [2, 2.4],
    [4, 5],
    [7, 4],
  ],
  G: [],
};
const ROWS: [string, number, number, number, number, number, number][] = [
  ["A", 1, 0, 0, 0, 0, 0],
  ["A", 2, 0, 0, 0, 0, 0],
  ["B", 1, 1, 1.5, 0, 1.5, 0],
  ["B", 2, 1.7320508, 2.1213203, 0, 4.5, 0],
  ["C", 1, 0.75, 1.5, 0, 0, 1.5],
  ["C", 2, 1.5, 2.1213203, 0, 0, 4.5],
  ["D", 1, 0.3333333, 1, 1, 0, 0],
  ["D", 2, 0.5773503, 1, 1, 0, 0],
  ["E", 1, 1.2666667, 3.8, 0.8, 1.5, 1.5],
  ["E", 2, 1.764464, 3.0561414, 0.34, 4.5, 4.5],
  ["F", 1, 0.85, 1.9, 0.4, 0, 1.5],
  ["F", 2, 1.5132746, 2.1587033, 0.16, 0, 4.5],
  ["G", 1, 3, 4.5, 0, 4.5, 0],
  ["G", 2, 3, 3.6742346, 0, 13.5, 0],
];

describe("OSPA and GOSPA", () => {
  it.each(ROWS)(
    "gives the worked values of %s at p = %i",
    (name, order, ospa, gospa, location, overlooked, strays) => {
      const measured = measureSetDistance(R, SETS[name] ?? [], { cutoff: 3, order });
      expect(measured.ospa).toBeCloseTo(ospa, 6);
      expect(measured.gospa).toBeCloseTo(gospa, 6);
      expect(measured.location).toBeCloseTo(location, 6);
      expect(measured.overlooked).toBeCloseTo(overlooked, 6);
      expect(measured.strays).toBeCloseTo(strays, 6);
    },
  );

  it("gives the published unit tests of the Stone Soup library", () => {
    const line = (shift: number): Place[] => [0, 1, 2, 3, 4].map((i) => [i + shift]);
    const half = measureSetDistance(line(0), line(0.5), { cutoff: 10, order: 1 });
    expect([half.ospa, half.gospa]).toEqual([expect.closeTo(0.5, 9), expect.closeTo(2.5, 9)]);
    expect(measureSetDistance(line(0), line(1), { cutoff: 10, order: 1 }).gospa).toBeCloseTo(5, 9);
    for (const order of [1, 2]) {
      expect(measureSetDistance(line(0), line(0.2), { cutoff: 10, order }).ospa).toBeCloseTo(0.2, 9);
    }
  });

  it("counts a pair exactly at the cut-off as two places without a partner", () => {
    const measured = measureSetDistance([[0, 0]], [[3, 0]], { cutoff: 3, order: 1 });
    expect(measured).toMatchObject({ location: 0, overlooked: 1.5, strays: 1.5, gospa: 3, ospa: 3 });
  });

  it("gives a likeness from 1 for equal sets to 0 where nothing is paired", () => {
    const options = { cutoff: 3, order: 1 };
    const expected: [string, number][] = [
      ["A", 1],
      ["B", 0.8],
      ["C", 0.8571],
      ["D", 0.8889],
      ["E", 0.5778],
      ["F", 0.819],
      ["G", 0],
    ];
    for (const [name, likeness] of expected) {
      const set = SETS[name] ?? [];
      const distance = measureSetDistance(R, set, options);
      expect(getSetLikeness(distance, R.length + set.length, options)).toBeCloseTo(likeness, 4);
    }
    expect(getSetLikeness(measureSetDistance([], [], options), 0, options)).toBe(1);
  });
});
