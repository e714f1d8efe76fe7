/** What the engine's sentences may claim (rule 7). */
import { describe, expect, it } from "vitest";
import { compareIds } from "@/lib/plot/compare-ids";
import type { PlottedMark, ReferenceMark } from "@/lib/plot/mark";
import type { Reference } from "@/lib/plot/stone";
import {
  getGirdleWidthMm,
  nameAway,
  nameClock,
  nameDistance,
  nameList,
  nameReferenceMark,
} from "@/lib/scoring/name-things";
import { scorePlot } from "@/lib/scoring/score-plot";
import { makeBody, makeInput } from "@/tests/support/scoring/make-case";

describe("names", () => {
  it("orders ids by number within text, and totally", () => {
    expect(["m10", "m2", "m1", "a", "M1", "m02", "m", "10", "9"].sort(compareIds)).toEqual([
      "9",
      "10",
      "M1",
      "a",
      "m",
      "m1",
      "m02",
      "m2",
      "m10",
    ]);
    expect(compareIds("m2", "m02")).not.toBe(0);
  });

  it("gives lengths in girdle widths and, where the stone was measured, in millimetres", () => {
    const round = getGirdleWidthMm(makeBody());
    expect(round).toBeCloseTo(5.185, 9);
    expect(getGirdleWidthMm(makeBody({ cut: "oval", measurementsMm: [7, 5, 3] }))).toBe(5);
    expect(nameDistance(0.012, round)).toBe("0.012 girdle widths (0.06 mm)");
    expect([nameAway(0.0001, round), nameAway(0.012, null)]).toEqual(["on", "0.012 girdle widths from"]);
  });

  it("reads clock positions to the half hour", () => {
    expect([0, 45, 120, 359, -90, 225].map(nameClock)).toEqual([
      "12 o'clock",
      "half past 1",
      "4 o'clock",
      "12 o'clock",
      "9 o'clock",
      "half past 7",
    ]);
  });

  it("lists and names without repeating itself", () => {
    expect([nameList([]), nameList(["a"]), nameList(["a", "b", "c"])]).toEqual(["", "a", "a, b and c"]);
    const mark: ReferenceMark = {
      id: "cloud",
      view: "crown",
      characteristic: "cloud",
      shape: { kind: "dot", at: [0, 0] },
    };
    expect([nameReferenceMark(mark), nameReferenceMark({ ...mark, id: "a" })]).toEqual(["cloud", "cloud a"]);
  });
});

describe("what to practise (rule 7.3)", () => {
  const reference: Reference = {
    grades: { clarity: "SI1" },
    marks: [
      {
        id: "a",
        view: "crown",
        characteristic: "feather",
        shape: { kind: "dot", at: [0.1, 0.1] },
        decidesGrade: true,
      },
      { id: "b", view: "crown", characteristic: "pinpoint", shape: { kind: "dot", at: [-0.2, 0.1] } },
    ],
    decoys: [],
  };
  const dot = (id: string, x: number, y: number, more: Partial<PlottedMark> = {}): PlottedMark => ({
    id,
    view: "crown",
    characteristic: "pinpoint",
    shape: { kind: "dot", at: [x, y] },
    ...more,
  });
  const practise = (marks: PlottedMark[], clarity = "SI1") =>
    scorePlot(makeInput(reference, { grades: { clarity }, marks })).detail.practise.join(" ");

  it("says nothing of a plot with nothing to better", () => {
    expect(practise([dot("m1", 0.1, 0.1, { characteristic: "feather" }), dot("m2", -0.2, 0.1)])).toBe("");
  });

  it("names what was overlooked and that it decides the grade", () => {
    expect(practise([dot("m2", -0.2, 0.1)])).toMatch(/Overlooked: 1 feather\..*decides the clarity grade/);
  });

  it("tells of cleaning only where dust was found, and then defers to the school's rules", () => {
    expect(practise([dot("m1", 0.3, -0.3)])).toMatch(
      /put down to dust: wipe .* dry lint-free cloth, as your school's rules/,
    );
    expect(practise([dot("m1", 0.3, -0.3, { proofs: ["wiped"] })])).not.toMatch(/dust|wipe|cloth/);
  });

  it("names a confusion only for a mark that lies near enough to be one", () => {
    expect(practise([dot("m1", 0.1, 0.1), dot("m2", -0.2, 0.1)])).toMatch(/took feather for pinpoint/);
    expect(practise([dot("m1", 0.1, 0.19), dot("m2", -0.2, 0.1)])).not.toMatch(/took/);
  });

  it("names grades that are two steps off or more", () => {
    expect(practise([], "VS1")).toMatch(/Off in clarity by 2 steps/);
    expect(practise([], "VS2")).not.toMatch(/Off in/);
  });

  it("gives what each found mark lost in points that add up", () => {
    const { detail, result } = scorePlot(
      makeInput(reference, {
        grades: {},
        marks: [dot("m1", 0.1, 0.15), dot("m2", 0.2, 0.1, { view: "pavilion" })],
      }),
    );
    for (const { lost, reference: id } of detail.found) {
      const value = result.found.find((found) => found.reference === id)?.value ?? 0;
      expect(lost.location + lost.type + lost.extent + lost.view).toBeCloseTo(35 * (1 - value), 1);
    }
    expect(detail.found.map(({ how }) => how)).toEqual(["matched", "other-view"]);
  });
});
