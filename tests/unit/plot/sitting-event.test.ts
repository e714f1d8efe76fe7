import { describe, expect, it } from "vitest";
import type { PlottedMark } from "@/lib/plot/mark";
import { EMPTY_SITTING, rebuildSitting, type SittingEvent } from "@/lib/plot/sitting-event";

const dot = (id: string, x: number): PlottedMark => ({
  id,
  view: "crown",
  characteristic: "pinpoint",
  shape: { kind: "dot", at: [x, 0] },
});

const LOG: SittingEvent[] = [
  { seq: 1, atMs: 5, kind: "prepared", step: "cleaned", done: true },
  { seq: 2, atMs: 10, kind: "marks", put: [dot("m1", 0), dot("m2", 0.1)], removed: [] },
  { seq: 3, atMs: 20, kind: "marks", put: [dot("m1", 0.2)], removed: ["m2"] },
  { seq: 4, atMs: 30, kind: "grade", property: "clarity", grade: "VS1" },
  { seq: 5, atMs: 40, kind: "grade", property: "clarity", grade: null },
];

describe("rebuildSitting", () => {
  it("gives the empty sitting for an empty log", () => {
    expect(rebuildSitting([])).toEqual(EMPTY_SITTING);
  });

  it("adds up to the last word on every mark, grade and step", () => {
    expect(rebuildSitting(LOG)).toEqual({
      plot: { grades: {}, marks: [dot("m1", 0.2)] },
      prepared: { cleaned: 5 },
      lastSeq: 5,
    });
  });

  it("does not depend on the order in which the log is read", () => {
    expect(rebuildSitting([...LOG].reverse())).toEqual(rebuildSitting(LOG));
  });

  it("takes a confirmation back", () => {
    const log: SittingEvent[] = [
      ...LOG,
      { seq: 6, atMs: 50, kind: "prepared", step: "cleaned", done: false },
    ];
    expect(rebuildSitting(log).prepared).toEqual({});
  });
});
