import { describe, expect, it } from "vitest";
import { writeExerciseSet } from "@/lib/exchange/write-exercise-set";
import { getRimShare } from "@/lib/gem/is-inside-outline";
import type { Solid } from "@/lib/gem/solid";
import { listVertices } from "@/lib/plot/shape";
import type { Stone } from "@/lib/plot/stone";
import { listExerciseSets } from "@/tests/support/list-exercise-sets";

const sets = listExerciseSets();
const stones = sets.flatMap(({ resolved }) =>
  resolved.set.stones.map((stone, index): [string, Stone, Solid] => [
    stone.id,
    stone,
    resolved.solids[index] as Solid,
  ]),
);

/** Things that lie at the girdle (check-values.md 1.6: natural, bearding, rough girdle, chip). */
const AT_THE_GIRDLE = ["natural", "indented-natural", "bearding", "rough-girdle"];

describe("the demo's sets", () => {
  it("are at least eight round brilliants from Loupe-clean to P1 with ids of their own", () => {
    expect(stones.length).toBeGreaterThanOrEqual(8);
    expect(new Set(stones.map(([id]) => id)).size).toBe(stones.length);
    expect(stones.every(([, stone]) => stone.cut === "round-brilliant")).toBe(true);
    const grades = new Set(stones.map(([, stone]) => stone.grades.clarity));
    expect([...grades].sort()).toEqual(
      ["Loupe-clean", "P1", "SI1", "SI2", "VS1", "VS2", "VVS1", "VVS2"].sort(),
    );
  });

  it.each(sets.map(({ name, text, resolved }) => [name, text, resolved] as const))(
    "%s is written again as the same bytes",
    (_, text, resolved) => {
      expect(writeExerciseSet(resolved.set)).toBe(text);
    },
  );

  it.each(stones)("%s has measurements that its proportions and its weight bear out", (_, stone, solid) => {
    const [a, b, depth] = stone.measurementsMm ?? [0, 0, 0];
    const width = (a + b) / 2;
    const height = solid.crownHeight + solid.girdleThickness + solid.pavilionDepth;
    // Measured to a hundredth of a millimetre.
    expect(Math.abs(depth - height * width)).toBeLessThan(0.011);
    // Estimate of a round brilliant's weight, 0.0061 * width^2 * depth in mm (common practice, no source).
    expect(stone.weightCt).toBeCloseTo(0.0061 * width * width * depth, 1);
  });

  it.each(stones)("%s has a landmark where fewer than three marks could support a turn", (_, stone) => {
    const counted = stone.marks.filter(({ optional }) => !optional).length;
    if (counted < 3) expect(stone.landmark).toBeTruthy();
  });

  it.each(stones)(
    "%s has a depth for every inside mark, none for surface marks, and girdle marks at the girdle",
    (_, stone, solid) => {
      const { characteristics } = sets[0]?.resolved ?? { characteristics: new Map() };
      for (const mark of stone.marks) {
        const isInside = characteristics.get(mark.characteristic)?.class === "inside";
        expect([mark.id, mark.depth !== undefined]).toEqual([mark.id, isInside]);
        if (!AT_THE_GIRDLE.includes(mark.characteristic)) continue;
        const shares = listVertices(mark.shape).map((vertex) => getRimShare(solid, mark.view, vertex));
        expect(Math.max(...shares)).toBeGreaterThan(0.95);
      }
    },
  );

  it("show many characteristics, every kind of decoy that a stone can have, and marks that decide the grade", () => {
    const marks = stones.flatMap(([, stone]) => stone.marks);
    expect(new Set(marks.map(({ characteristic }) => characteristic)).size).toBeGreaterThanOrEqual(20);
    expect(new Set(marks.map(({ shape }) => shape.kind))).toEqual(new Set(["dot", "stroke", "outline"]));
    expect(new Set(stones.flatMap(([, stone]) => stone.decoys.map(({ cause }) => cause)))).toEqual(
      new Set(["echo", "glint", "other-view"]),
    );
    for (const [id, stone] of stones) {
      const decides = stone.marks.some(({ decidesGrade }) => decidesGrade);
      expect([id, decides]).toEqual([id, stone.grades.clarity !== "Loupe-clean"]);
    }
  });
});
