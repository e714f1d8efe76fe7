import { describe, expect, it } from "vitest";
import {
  arrangeRows,
  countStrays,
  getMeanTotal,
  listGridRows,
  toBiasWords,
  toCellWords,
} from "@/components/staff/arrange-grid";
import { findNeighbours } from "@/components/staff/find-neighbours";
import { DEFAULT_RUBRIC } from "@/lib/plot/rubric";
import { type ReviewCell, type ReviewGrid, ReviewGridSchema } from "@/lib/plot/staff-view";

const cell = (studentId: string, exerciseStoneId: string, more: Partial<ReviewCell> = {}): ReviewCell => ({
  studentId,
  exerciseStoneId,
  sittingId: null,
  state: "not-begun",
  markCount: 0,
  total: null,
  found: 0,
  overlooked: 0,
  straysByCause: {},
  attempt: 1,
  retakeOn: null,
  earlier: [],
  clarityBias: null,
  suspectStone: null,
  overrules: 0,
  comments: 0,
  timedOut: false,
  ...more,
});
const scored = (sittingId: string, total: number): Partial<ReviewCell> => ({
  sittingId,
  total,
  state: "scored",
});

const NO_EXTRA = { extraMinutes: 0, extraAttempts: 0, dueAt: null, closesAt: null, extraReason: "" };
const AT = "2026-11-25T09:00:00.000Z";
const GRID: ReviewGrid = ReviewGridSchema.parse({
  exercise: {
    exerciseId: "e",
    title: "First look",
    sectionId: "s",
    sectionName: "Day class",
    opensAt: AT,
    dueAt: AT,
    closesAt: null,
    phase: "open",
    stones: 2,
    students: 3,
    handedIn: 3,
    released: 0,
  },
  revision: 1,
  notes: "",
  debriefsAt: null,
  rules: { preparation: "asked", schoolRules: "" },
  rubric: DEFAULT_RUBRIC,
  rubricVersion: 1,
  older: { results: 0, byReference: 0, byBody: 0, byRubric: 0, released: 0 },
  openRescore: null,
  stones: [
    { exerciseStoneId: "x1", stoneId: "1", label: "A-01", clarity: "VS1", opensAt: null, isBlind: false },
    { exerciseStoneId: "x2", stoneId: "2", label: "A-02", clarity: null, opensAt: null, isBlind: false },
  ],
  students: [
    { studentId: "u1", name: "Wren", ...NO_EXTRA },
    { studentId: "u2", name: "Ada", ...NO_EXTRA },
    { studentId: "u3", name: "Élodie", ...NO_EXTRA },
  ],
  cells: [
    cell("u1", "x1", scored("s11", 80)),
    cell("u1", "x2", { ...scored("s12", 60), state: "released" }),
    cell("u2", "x1", { sittingId: "s21", state: "on-the-bench", markCount: 1 }),
    cell("u2", "x2"),
    cell("u3", "x1", scored("s31", 40)),
    cell("u3", "x2"),
  ],
});
const names = (rows: readonly { name: string }[]) => rows.map(({ name }) => name);

describe("the review grid", () => {
  const rows = listGridRows(GRID);

  it("lays cells out by student and stone whatever their order", () => {
    const turned = listGridRows({ ...GRID, cells: [...GRID.cells].reverse() });
    expect(turned).toEqual(rows);
    expect(rows.map((row) => row.cells.map(({ sittingId }) => sittingId))).toEqual([
      ["s11", "s12"],
      ["s21", null],
      ["s31", null],
    ]);
  });

  it("takes means over what is scored, and gives none where nothing is", () => {
    expect(rows.map(({ mean }) => mean)).toEqual([70, null, 40]);
    expect(getMeanTotal([])).toBeNull();
  });

  it("orders by name, by mean with the unscored last, and by what waits", () => {
    expect(names(arrangeRows(rows, "", "name"))).toEqual(["Ada", "Élodie", "Wren"]);
    expect(names(arrangeRows(rows, "", "mean-up"))).toEqual(["Élodie", "Wren", "Ada"]);
    expect(names(arrangeRows(rows, "", "mean-down"))).toEqual(["Wren", "Élodie", "Ada"]);
    expect(names(arrangeRows(rows, "", "open"))).toEqual(["Élodie", "Wren", "Ada"]);
  });

  it("searches names without regard to case", () => {
    expect(names(arrangeRows(rows, " wr ", "name"))).toEqual(["Wren"]);
    expect(arrangeRows(rows, "zz", "name")).toEqual([]);
  });

  it("adds strays up over their causes", () => {
    expect(countStrays(cell("u", "x", { straysByCause: { dust: 2, echo: 1 } }))).toBe(3);
  });

  it("says of a cell what it shows", () => {
    expect(toBiasWords(0)).toBe("clarity exact");
    expect(toBiasWords(1)).toBe("clarity 1 step harsher");
    expect(toBiasWords(-2)).toBe("clarity 2 steps kinder");
    expect(toBiasWords(null)).toBeNull();
    const words = toCellWords(
      cell("u", "x", { ...scored("s", 81.25), found: 4, overlooked: 1, straysByCause: { dust: 1 } }),
      "Scored",
    );
    expect(words).toBe("Scored, 81.3 points, 4 found, 1 overlooked, 1 stray");
    expect(toCellWords(cell("u", "x", { sittingId: "s", markCount: 1 }), "On the bench")).toBe(
      "On the bench, 1 mark",
    );
  });

  it("finds the same stone's work on either side, past whoever has not begun", () => {
    const [first, , second, , third] = GRID.cells;
    expect(findNeighbours(GRID, first as ReviewCell)).toEqual({
      before: null,
      after: { sittingId: "s21", words: "Ada" },
    });
    expect(findNeighbours(GRID, second as ReviewCell).before?.sittingId).toBe("s11");
    expect(findNeighbours(GRID, third as ReviewCell)).toEqual({
      before: { sittingId: "s21", words: "Ada" },
      after: null,
    });
  });
});
