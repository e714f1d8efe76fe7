import { poissonDistribution } from "simple-statistics";
import { describe, expect, it } from "vitest";
import { clusterPlaces } from "@/lib/agreement/cluster-places";
import {
  EVIDENCE_RULES,
  EVIDENCE_THRESHOLD_WORDS,
  findFewestEnough,
  judgeCluster,
} from "@/lib/agreement/judge-cluster";
import { computeLateChance } from "@/lib/agreement/late-chance";
import { computePoissonTail } from "@/lib/agreement/poisson-tail";
import { getShapeDistance } from "@/lib/plot/get-shape-distance";
import { turnShape } from "@/lib/plot/turn-shape";

describe("computePoissonTail", () => {
  // The outside library lists P(X = k) up to its own cut-off; summed here.
  it.each([0.3, 2, 7.5])("agrees with simple-statistics' Poisson distribution of mean %d", (mean) => {
    const table = poissonDistribution(mean) ?? [];
    for (let count = 1; count < table.length; count += 1) {
      const below = table.slice(0, count).reduce((sum, share) => sum + share, 0);
      expect(computePoissonTail(count, mean)).toBeCloseTo(1 - below, 9);
    }
    expect(table.length).toBeGreaterThan(4);
  });

  it("keeps small tails, and knows its ends", () => {
    expect(computePoissonTail(30, 1)).toBeGreaterThan(0);
    expect(computePoissonTail(30, 1)).toBeLessThan(1e-32);
    expect(computePoissonTail(0, 3)).toBe(1);
    expect(computePoissonTail(1, 0)).toBe(0);
    expect(() => computePoissonTail(1.5, 1)).toThrow(RangeError);
    expect(() => computePoissonTail(1, -1)).toThrow(RangeError);
  });
});

/** All ways to choose which of `total` hand-ins are marked. */
function listChoices(total: number, marked: number): number[][] {
  if (marked === 0) return [[]];
  return Array.from({ length: total }, (_, first) => first).flatMap((first) =>
    listChoices(total, marked - 1)
      .filter((rest) => rest.every((one) => one > first))
      .map((rest) => [first, ...rest]),
  );
}

describe("computeLateChance", () => {
  it("is the share of all orders in which the first comes so late (counted one by one)", () => {
    for (const [total, marked] of [
      [6, 2],
      [7, 3],
      [5, 5],
    ] as const) {
      const all = listChoices(total, marked);
      for (let before = 0; before + marked <= total; before += 1) {
        const late = all.filter(([first = 0]) => first >= before).length;
        expect(computeLateChance(before, marked, total)).toBeCloseTo(late / all.length, 12);
      }
    }
  });

  it("refuses counts that do not fit", () => {
    expect(() => computeLateChance(4, 3, 6)).toThrow(RangeError);
    expect(computeLateChance(3, 0, 6)).toBe(1);
  });
});

describe("judgeCluster", () => {
  const ground = (students: number) => ({ students, strays: [1, 1, 2], area: Math.PI / 4 });

  it("says nothing of few students, however alike they are", () => {
    const { share, isEnough } = judgeCluster(7, ground(7));
    expect(isEnough).toBe(false);
    expect(share).toEqual({ undefined: "fewer than 8 students have handed this stone in" });
    expect(judgeCluster(3, ground(8)).isEnough).toBe(false);
  });

  it("takes four of eight, not four of forty", () => {
    expect(judgeCluster(4, ground(8)).isEnough).toBe(true);
    expect(judgeCluster(4, ground(40)).isEnough).toBe(false);
  });

  it("knows the fewest that are enough", () => {
    const fewest = findFewestEnough(ground(40)) ?? 0;
    expect(judgeCluster(fewest, ground(40)).isEnough).toBe(true);
    expect(judgeCluster(fewest - 1, ground(40)).isEnough).toBe(false);
    expect(findFewestEnough(ground(7))).toBeNull();
  });

  it("expects of a student with one stray the place's share of the view", () => {
    const { expected } = judgeCluster(1, { students: 9, strays: [1], area: Math.PI / 4 });
    expect(expected).toBeCloseTo((EVIDENCE_RULES.radius / 0.5) ** 2, 12);
  });

  it("has its rules in words", () => {
    const { fewestStudents, fewestMarking, leastShare } = EVIDENCE_RULES;
    for (const number of [
      `${fewestStudents} students`,
      `${fewestMarking} of them`,
      `${100 * leastShare} %`,
    ]) {
      expect(EVIDENCE_THRESHOLD_WORDS).toContain(number);
    }
  });
});

describe("turned plots", () => {
  it("come to lie on one another once each is turned back, the pavilion the other way round", () => {
    for (const view of ["crown", "pavilion"] as const) {
      const drawn = [0, 45, 90, -135].map((turnDeg, i) => {
        const held = turnShape(view, { kind: "dot", at: [0.2, 0.1] }, -turnDeg);
        const laid = turnShape(view, held, turnDeg);
        return { view, at: laid.kind === "dot" ? laid.at : ([9, 9] as const), by: `s${i}` };
      });
      const [only] = clusterPlaces(drawn, { radius: 0.01, fewest: 4 });
      expect(only?.people).toBe(4);
      expect(only?.at[0]).toBeCloseTo(0.2, 12);
    }
    // A quarter clockwise as the crown is seen: 12 o'clock goes to 3, which the pavilion view shows on the left.
    expect(turnShape("crown", { kind: "dot", at: [0, 0.3] }, 90)).toEqual({ kind: "dot", at: [0.3, 0] });
    expect(turnShape("pavilion", { kind: "dot", at: [0, 0.3] }, 90)).toEqual({ kind: "dot", at: [-0.3, 0] });
  });
});

describe("getShapeDistance", () => {
  it("measures to the nearest point of a shape, and 0 inside an outline", () => {
    const square = {
      kind: "outline" as const,
      points: [
        [0, 0],
        [0.2, 0],
        [0.2, 0.2],
        [0, 0.2],
      ] as [number, number][],
    };
    expect(getShapeDistance(square, [0.1, 0.1])).toBe(0);
    expect(getShapeDistance(square, [0.3, 0.1])).toBeCloseTo(0.1, 12);
    expect(getShapeDistance(square, [-0.05, 0.1])).toBeCloseTo(0.05, 12);
    expect(
      getShapeDistance(
        {
          kind: "stroke",
          points: [
            [0, 0],
            [0.2, 0],
          ],
        },
        [0.1, 0.05],
      ),
    ).toBeCloseTo(0.05, 12);
    expect(getShapeDistance({ kind: "dot", at: [0.3, 0.4] }, [0, 0])).toBeCloseTo(0.5, 12);
  });
});
