/** A set's own numbers over a program's defaults, and what differs between two rubrics in words. */
import { describe, expect, it } from "vitest";
import { listRubricChanges, toRubricChangeLine } from "@/lib/plot/list-rubric-changes";
import { DEFAULT_RUBRIC, findRubricFaults, type Rubric, resolveSetRubric } from "@/lib/plot/rubric";

/** Other than Loupework's own in each of the numbers that are bound together. */
const PROGRAM: Rubric = {
  ...DEFAULT_RUBRIC,
  near: 0.08,
  far: 0.2,
  parts: { location: 0.2, type: 0.2, extent: 0.6 },
  shares: { plot: 20, clarity: 40, otherGrades: 40 },
  deductions: { ...DEFAULT_RUBRIC.deductions, dust: 8, echo: 7 },
  gradeCredit: [1, 0.5],
};

describe("a set over a program's defaults", () => {
  it("keeps every key that it has and takes the rest from the program", () => {
    expect(resolveSetRubric({}, PROGRAM)).toEqual(PROGRAM);
    expect(resolveSetRubric({ deductions: { dust: 1 }, merged: 0.9 }, PROGRAM)).toEqual({
      ...PROGRAM,
      merged: 0.9,
      deductions: { ...PROGRAM.deductions, dust: 1 },
    });
  });

  it.each([
    ["far", { far: 0.05 }, { near: DEFAULT_RUBRIC.near, far: 0.05 }],
    ["near", { near: 0.02 }, { near: 0.02, far: DEFAULT_RUBRIC.far }],
    ["shares", { shares: { plot: 60, clarity: 30 } }, { shares: { plot: 60, clarity: 30, otherGrades: 10 } }],
    ["parts", { parts: { type: 0.5, extent: 0 } }, { parts: { location: 0.5, type: 0.5, extent: 0 } }],
  ])(
    "reads what is bound to %s as the set was written, so that no fault comes of the two",
    (_what, set, bound) => {
      const rubric = resolveSetRubric(set, PROGRAM);
      expect(rubric).toEqual({ ...PROGRAM, ...bound });
      expect(findRubricFaults(rubric)).toEqual([]);
    },
  );

  it("changes nothing for a program that has changed nothing", () => {
    expect(resolveSetRubric({ near: 0.02, shares: { plot: 60, clarity: 30 } }, DEFAULT_RUBRIC)).toEqual({
      ...DEFAULT_RUBRIC,
      near: 0.02,
      shares: { plot: 60, clarity: 30, otherGrades: 10 },
    });
  });
});

describe("the changes between two rubrics", () => {
  it("are none for the same", () => {
    expect(listRubricChanges(PROGRAM, structuredClone(PROGRAM))).toEqual([]);
    expect(toRubricChangeLine([])).toBe("");
  });

  it("are told in the words and units of the screen, by group", () => {
    const after: Rubric = {
      ...DEFAULT_RUBRIC,
      near: 0.04,
      orientation: "given",
      gradeCredit: [1, 0.5],
      deductions: { ...DEFAULT_RUBRIC.deductions, dust: 5, echo: 2 },
      dust: { ...DEFAULT_RUBRIC.dust, burstGapMs: 2000 },
      glint: { ...DEFAULT_RUBRIC.glint, rim: 0.1, prongDeg: 9 },
    };
    expect(toRubricChangeLine(listRubricChanges(DEFAULT_RUBRIC, after))).toBe(
      "When a mark is in the right place: Full credit within 0.03 → 0.04; " +
        "What a stray costs: Dust 4 pts → 5 pts, Echo 3 pts → 2 pts; " +
        "When a stray counts as dust or glint: Longest pause within a burst 1.5 s → 2 s, " +
        "Glint lies in the outermost 8 % → 10 %, Prongs: within 8° → 9°; " +
        "Credit for a grade: By steps away 100, 60, 20, 0 % → 100, 50 %; " +
        "How the stone is held: Orientation free → given",
    );
  });
});
