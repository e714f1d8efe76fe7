import { describe, expect, it } from "vitest";
import { findBurstUnderWay } from "@/components/bench/follow-dotting";
import { listOpenPoints } from "@/components/bench/list-open-points";
import type { PlottedMark } from "@/lib/plot/mark";

const mark = (number: number, more: Partial<PlottedMark> = {}): PlottedMark => ({
  id: `m${number}`,
  view: "crown",
  characteristic: "crystal",
  shape: { kind: "dot", at: [0.01 * number, 0] },
  atMs: number * 1000,
  ...more,
});
const RULES = { preparation: "asked", schoolRules: "" } as const;
const PREPARED = { cleaned: 1, held: 2, tilted: 3, regripped: 4 };
const GRADES = { clarity: "VS1", colour: "G", polish: "Good", symmetry: "Good", fluorescence: "None" };

describe("what is still open at hand-in", () => {
  it("is nothing when everything was given", () => {
    const marks = [mark(1, { confidence: 4, proofs: ["wiped"] })];
    expect(
      listOpenPoints({ plot: { marks, grades: GRADES }, prepared: PREPARED, lastSeq: 9 }, RULES),
    ).toEqual([]);
  });

  it("names marks by the numbers of their callouts, in the order of drawing", () => {
    const given = { confidence: 3, proofs: ["tilted"] } as const;
    const marks = [
      mark(3, { proofs: ["wiped"] }),
      mark(1, { ...given, proofs: ["tilted"] }),
      mark(2, { confidence: 1 }),
    ];
    expect(
      listOpenPoints({ plot: { marks, grades: GRADES }, prepared: PREPARED, lastSeq: 9 }, RULES),
    ).toEqual(["1 mark without a confidence: 3", "1 mark without a proof: 2"]);
  });

  it("says in one sentence what no mark has, what was not graded and what was not prepared", () => {
    const marks = [mark(1), mark(2)];
    expect(
      listOpenPoints(
        { plot: { marks, grades: { clarity: "VS1" } }, prepared: { held: 1 }, lastSeq: 9 },
        RULES,
      ),
    ).toEqual([
      "Not graded: colour, polish, symmetry, fluorescence",
      "None of the 2 marks has a confidence",
      "None of the 2 marks has a proof",
      "3 of 4 steps of the preparation not confirmed",
    ]);
  });

  it("asks about a plot without a mark, and leaves preparation out where the exercise does", () => {
    const sitting = { plot: { marks: [], grades: GRADES }, prepared: {}, lastSeq: 0 };
    expect(listOpenPoints(sitting, { preparation: "off", schoolRules: "" })).toEqual([
      "No mark is plotted: the stone goes in as one in which you found nothing",
    ]);
  });
});

describe("a burst of dots under way (scoring.md 5.6: six dots, 1.5 s)", () => {
  const row = (count: number, gapMs: number) =>
    Array.from({ length: count }, (_, i) => mark(i + 1, { atMs: 1000 + i * gapMs }));

  it("is seen with the sixth dot and not before", () => {
    expect(findBurstUnderWay(row(5, 400))).toBeNull();
    expect(findBurstUnderWay(row(6, 400))?.dots).toHaveLength(6);
  });

  it("is none when the dots come slowly, and over once another dot came later", () => {
    expect(findBurstUnderWay(row(12, 1501))).toBeNull();
    expect(findBurstUnderWay([...row(6, 400), mark(99, { atMs: 60_000 })])).toBeNull();
  });

  it("is none without a mark", () => {
    expect(findBurstUnderWay([])).toBeNull();
  });
});
