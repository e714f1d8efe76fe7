import { describe, expect, it } from "vitest";
import { listOpenPoints } from "@/components/bench/list-open-points";
import { DEFAULT_CHARACTERISTICS } from "@/lib/plot/characteristic";
import { DEFAULT_RULES, type ExerciseRules } from "@/lib/plot/exercise-rules";
import { findBurstUnderWay } from "@/lib/plot/find-dotting";
import type { PlottedMark } from "@/lib/plot/mark";
import type { SittingState } from "@/lib/plot/sitting-event";

const mark = (number: number, more: Partial<PlottedMark> = {}): PlottedMark => ({
  id: `m${number}`,
  view: "crown",
  characteristic: "crystal",
  shape: { kind: "dot", at: [0.01 * number, 0] },
  atMs: number * 1000,
  ...more,
});
const RULES: ExerciseRules = { ...DEFAULT_RULES, proofs: "dots" };
const CHARACTERISTICS = [...DEFAULT_CHARACTERISTICS.values()];
const list = (sitting: SittingState, rules: ExerciseRules = RULES) =>
  listOpenPoints(sitting, rules, CHARACTERISTICS);
const PREPARED = { cleaned: 1, held: 2, tilted: 3, regripped: 4 };
const GRADES = { clarity: "VS1", colour: "G", polish: "Good", symmetry: "Good", fluorescence: "None" };

describe("what is still open at hand-in", () => {
  it("is nothing when everything was given", () => {
    const marks = [mark(1, { confidence: 4, proofs: ["wiped"] })];
    expect(list({ plot: { marks, grades: GRADES }, prepared: PREPARED, lastSeq: 9 })).toEqual({
      sentences: [],
      unproved: [],
    });
  });

  it("names marks by the numbers of their callouts, in the order of drawing", () => {
    const given = { confidence: 3, proofs: ["tilted"] } as const;
    const marks = [
      mark(3, { proofs: ["wiped"] }),
      mark(1, { ...given, proofs: ["tilted"] }),
      mark(2, { confidence: 1 }),
    ];
    expect(list({ plot: { marks, grades: GRADES }, prepared: PREPARED, lastSeq: 9 })).toEqual({
      sentences: ["1 mark without a confidence: 3"],
      unproved: [{ id: "m2", number: 2, words: "2, crystal, crown" }],
    });
  });

  it("says in one sentence what no mark has, what was not graded and what was not prepared", () => {
    const marks = [mark(1), mark(2)];
    expect(
      list({ plot: { marks, grades: { clarity: "VS1" } }, prepared: { held: 1 }, lastSeq: 9 }).sentences,
    ).toEqual([
      "Not graded: colour, polish, symmetry, fluorescence",
      "None of the 2 marks has a confidence",
      "3 of 4 steps of the preparation not confirmed",
    ]);
  });

  it("asks about a plot without a mark, and leaves preparation out where the exercise does", () => {
    const sitting = { plot: { marks: [], grades: GRADES }, prepared: {}, lastSeq: 0 };
    expect(list(sitting, { ...RULES, preparation: "off" }).sentences).toEqual([
      "No mark is plotted: the stone goes in as one in which you found nothing",
    ]);
  });
});

describe("marks that are asked for a proof", () => {
  const stroke = {
    kind: "stroke" as const,
    points: [
      [0, 0],
      [0.1, 0],
    ] as [number, number][],
  };
  const marks = [
    mark(1),
    mark(2, { shape: stroke }),
    mark(3, { characteristic: "scratch" }),
    mark(4, { characteristic: "feather", shape: stroke, proofs: ["regripped"] }),
  ];
  const unproved = (proofs: ExerciseRules["proofs"]) =>
    list({ plot: { marks, grades: {} }, prepared: {}, lastSeq: 4 }, { ...RULES, proofs }).unproved;

  it("are every dot, every mark inside, or none, by the exercise", () => {
    expect(unproved("none")).toEqual([]);
    expect(unproved("dots").map(({ number }) => number)).toEqual([1, 3]);
    expect(unproved("inside").map(({ number }) => number)).toEqual([1, 2]);
  });
});

describe("a burst of dots under way (scoring.md 5.6: six dots, 1.5 s)", () => {
  const find = (marks: PlottedMark[]) => findBurstUnderWay(marks, RULES.dotting);
  const row = (count: number, gapMs: number) =>
    Array.from({ length: count }, (_, i) => mark(i + 1, { atMs: 1000 + i * gapMs }));

  it("is seen with the sixth dot and not before", () => {
    expect(find(row(5, 400))).toBeNull();
    expect(find(row(6, 400))?.dots).toHaveLength(6);
  });

  it("is none when the dots come slowly, and over once another dot came later", () => {
    expect(find(row(12, 1501))).toBeNull();
    expect(find([...row(6, 400), mark(99, { atMs: 60_000 })])).toBeNull();
  });

  it("is over once its dots were taken away, and goes by the exercise's own numbers", () => {
    expect(find(row(6, 400).slice(0, 5))).toBeNull();
    const rule = { isOn: true, burstDots: 3, burstGapMs: 300 };
    expect(findBurstUnderWay(row(3, 300), rule)?.dots).toHaveLength(3);
    expect(findBurstUnderWay(row(3, 301), rule)).toBeNull();
    expect(findBurstUnderWay(row(9, 300), { ...rule, isOn: false })).toBeNull();
  });

  it("is none without a mark", () => {
    expect(find([])).toBeNull();
  });
});
