import { describe, expect, it } from "vitest";
import { DEFAULT_CHARACTERISTICS } from "@/lib/plot/characteristic";
import { DEFAULT_SCALES } from "@/lib/plot/grades";
import type { Decoy, ReferenceMark } from "@/lib/plot/mark";
import { DEFAULT_RUBRIC } from "@/lib/plot/rubric";
import type { ReadingPlot } from "@/lib/plot/second-reading";
import { settleReadings } from "@/lib/plot/settle-readings";
import { type Reference, StoneBodySchema } from "@/lib/plot/stone";
import { turnShape } from "@/lib/plot/turn-shape";
import { compareReadings } from "@/lib/workflows/reading/compare-readings";

const GROUND = {
  stone: StoneBodySchema.parse({ cut: "round-brilliant" }),
  terms: { characteristics: DEFAULT_CHARACTERISTICS, scales: DEFAULT_SCALES },
  rubric: DEFAULT_RUBRIC,
};

const dot = (id: string, x: number, y: number, more: Partial<ReferenceMark> = {}): ReferenceMark => ({
  id,
  view: "crown",
  characteristic: "crystal",
  shape: { kind: "dot", at: [x, y] },
  ...more,
});
const decoy = (id: string, x: number): Decoy => ({
  id,
  view: "crown",
  cause: "echo",
  shape: { kind: "dot", at: [x, -0.3] },
});

const FIRST: Reference = {
  grades: { clarity: "SI2", colour: "H" },
  marks: [
    dot("a", 0.1, 0.1, { weight: 3, depth: 0.4 }),
    dot("b", -0.2, 0.1),
    dot("c", 0.05, -0.3, { optional: true }),
    dot("d", 0.3, 0.2),
  ],
  decoys: [decoy("x", 0.1), decoy("y", -0.2)],
};
const SECOND: ReadingPlot = {
  grades: { clarity: "SI1", polish: "Good" },
  marks: [
    dot("a", -0.2, 0.1, { characteristic: "pinpoint" }),
    dot("b", 0.12, 0.1),
    dot("d", 0.05, -0.3),
    dot("n", -0.3, -0.2, { characteristic: "feather" }),
  ],
  decoys: [decoy("x", 0.11), decoy("z", 0.25)],
};

const compared = compareReadings(FIRST, SECOND, GROUND);
const byKey = new Map(compared.differences.map((one) => [one.key, one]));

describe("compareReadings", () => {
  it("pairs by place, not by id, and says what only one has", () => {
    expect([...byKey.keys()]).toEqual([
      "pair:a",
      "pair:b",
      "pair:c",
      "only-first:d",
      "only-second:n",
      "decoy-only-first:y",
      "decoy-only-second:z",
      "grade:clarity",
      "grade:colour",
      "grade:polish",
    ]);
    expect(byKey.get("pair:a")?.second?.id).toBe("b");
    expect(byKey.get("pair:a")?.distance).toBeCloseTo(0.02, 9);
    expect(byKey.get("pair:a")?.agrees).toBe(true);
    expect(byKey.get("pair:b")?.agrees).toBe(false);
  });

  it("counts optional marks as any other", () => {
    const { figures } = compared;
    expect(figures).toMatchObject({ first: 4, second: 4, matched: 3, named: 2, turnDeg: 0 });
    expect(figures.grades).toEqual([{ property: "clarity", first: "SI2", second: "SI1", steps: -1 }]);
    expect(figures.ospa).toBeGreaterThan(0);
  });

  it("is the same whichever reader is called first, but for which is which", () => {
    const back = compareReadings(
      { ...FIRST, ...SECOND, grades: { clarity: "SI1", polish: "Good" } },
      FIRST,
      GROUND,
    );
    expect(back.figures).toMatchObject({ first: 4, second: 4, matched: 3, named: 2 });
    expect(back.figures.secondByFirst).toBeCloseTo(compared.figures.firstBySecond, 12);
    expect(back.figures.ospa).toBeCloseTo(compared.figures.ospa, 9);
  });

  it("finds no difference between a reference and itself, also plotted turned", () => {
    const turned = {
      ...FIRST,
      marks: FIRST.marks.map((mark) => ({ ...mark, shape: turnShape(mark.view, mark.shape, -90) })),
      decoys: FIRST.decoys.map((one) => ({ ...one, shape: turnShape(one.view, one.shape, -90) })),
    };
    const { figures, differences } = compareReadings(FIRST, turned, GROUND);
    expect(figures).toMatchObject({ matched: 4, named: 4, secondByFirst: 1, turnDeg: 90 });
    expect(differences.filter(({ agrees }) => !agrees)).toEqual([]);
  });
});

describe("settleReadings", () => {
  const settle = (choices: Parameters<typeof settleReadings>[2]) =>
    settleReadings(FIRST, compared.differences, choices);
  const places = ({ marks }: Reference) =>
    marks.map(({ id, shape }) => [id, shape.kind === "dot" ? shape.at : null]);

  it("keeps the first where nothing is chosen", () => {
    const kept = settle({});
    expect(kept.grades).toEqual(FIRST.grades);
    expect([...kept.marks].sort((a, b) => (a.id < b.id ? -1 : 1))).toEqual(FIRST.marks);
    expect(kept.decoys).toEqual(FIRST.decoys);
  });

  it("takes the second's place and name, and keeps what only the first says of a mark", () => {
    const taken = settle({
      "pair:a": "second",
      "pair:b": "second",
      "only-first:d": "second",
      "only-second:n": "second",
    });
    expect(places(taken)).toEqual([
      ["a", [0.12, 0.1]],
      ["b", [-0.2, 0.1]],
      ["c", [0.05, -0.3]],
      ["n", [-0.3, -0.2]],
    ]);
    expect(taken.marks[0]).toMatchObject({ weight: 3, depth: 0.4 });
    expect(taken.marks[1]?.characteristic).toBe("pinpoint");
  });

  it("merges a pair halfway, and makes what one alone has optional", () => {
    const merged = settle({ "pair:a": "merge", "only-first:d": "merge", "only-second:n": "merge" });
    const [a] = merged.marks;
    expect(a?.shape.kind === "dot" ? a.shape.at[0] : 0).toBeCloseTo(0.11, 12);
    expect(merged.marks.filter(({ optional }) => optional).map(({ id }) => id)).toEqual(["c", "d", "n"]);
  });

  it("settles decoys and grades, and never loses the clarity", () => {
    const taken = settle({
      "decoy-only-first:y": "second",
      "decoy-only-second:z": "second",
      "grade:clarity": "second",
      "grade:colour": "second",
      "grade:polish": "second",
    });
    expect(taken.decoys.map(({ id }) => id)).toEqual(["x", "z"]);
    expect(taken.grades).toEqual({ clarity: "SI1", polish: "Good" });
  });

  it("gives a mark that is added an id of its own", () => {
    const second = { ...SECOND, marks: [dot("a", -0.3, -0.3)] };
    const { differences } = compareReadings(FIRST, second, GROUND);
    const { marks } = settleReadings(FIRST, differences, { "only-second:a": "second" });
    expect(marks.map(({ id }) => id).sort()).toEqual(["a", "a-2", "b", "c", "d"]);
  });

  it("refuses a difference that is none and a choice that is none of it", () => {
    expect(() => settle({ "pair:zz": "second" })).toThrow(/cannot be taken/);
    expect(() => settle({ "grade:clarity": "merge" })).toThrow(/cannot be taken/);
  });
});
