import computeMunkres from "munkres-js";
import { describe, expect, it } from "vitest";
import { createSeededRandom } from "@/lib/base/seeded-random";
import { assignMinimum } from "@/lib/scoring/assign-minimum";
import { minimiseByTrial } from "@/tests/support/scoring/brute-force";

const X = Number.POSITIVE_INFINITY;

function assign(costs: readonly (readonly number[])[], tieCosts?: readonly (readonly number[])[]) {
  const [rows, columns] = [costs.length, costs[0]?.length ?? 0];
  const tie = tieCosts === undefined ? {} : { tieCost: Float64Array.from(tieCosts.flat()) };
  const columnOf = Array.from(
    assignMinimum({ rows, columns, cost: Float64Array.from(costs.flat()), ...tie }),
  );
  const made = columnOf.flatMap((column, row) => (column < 0 ? [] : [costs[row]?.[column] as number]));
  return { columnOf, pairs: made.length, cost: made.reduce((sum, cost) => sum + cost, 0) };
}

describe("published assignment problems", () => {
  // DIMACS / lp_solve example, as given in check-values 6.
  const dimacs = [
    [22, 30, 26, 16, 25],
    [27, 29, 28, 20, 32],
    [33, 25, 21, 29, 23],
    [24, 24, 30, 19, 26],
    [30, 33, 32, 37, 31],
  ];

  it("solves the DIMACS example: 118, and 162 when it is turned round", () => {
    expect(assign(dimacs)).toEqual({ columnOf: [0, 3, 2, 1, 4], pairs: 5, cost: 118 });
    expect(-assign(dimacs.map((row) => row.map((cost) => -cost))).cost).toBe(162);
  });

  it("solves the example of the scipy manual: 5 (a value from memory)", () => {
    expect(
      assign([
        [4, 1, 3],
        [2, 0, 5],
        [3, 2, 2],
      ]),
    ).toEqual({ columnOf: [1, 0, 2], pairs: 3, cost: 5 });
  });

  it("solves the example of the solvor documentation: 20", () => {
    expect(
      assign([
        [10, 5, 13],
        [3, 9, 18],
        [10, 6, 12],
      ]),
    ).toEqual({ columnOf: [1, 0, 2], pairs: 3, cost: 20 });
  });

  it("solves the rectangular example with forbidden cells of assign2D.m: 47", () => {
    const costs = [
      [X, 2, X, X, 3],
      [7, X, 23, X, X],
      [17, 24, X, X, X],
      [X, 6, 13, 20, X],
    ];
    expect(assign(costs)).toEqual({ columnOf: [4, 0, 1, 2], pairs: 4, cost: 47 });
  });
});

describe("edge cases", () => {
  it("makes nothing of no rows, no columns or nothing but forbidden pairs", () => {
    expect(assign([]).columnOf).toEqual([]);
    expect(assign([[], []]).columnOf).toEqual([-1, -1]);
    expect(
      assign([
        [X, X],
        [X, X],
      ]).columnOf,
    ).toEqual([-1, -1]);
  });

  it("breaks ties by the tie cost, then for the lower indices", () => {
    expect(
      assign([
        [5, 5, 5],
        [5, 5, 5],
      ]).columnOf,
    ).toEqual([0, 1]);
    expect(
      assign(
        [
          [5, 5],
          [5, 5],
        ],
        [
          [1, 0],
          [0, 1],
        ],
      ).columnOf,
    ).toEqual([1, 0]);
    expect(assign([[5], [5], [5]]).columnOf).toEqual([0, -1, -1]);
  });

  it("never pays for a tie with cost", () => {
    expect(
      assign(
        [
          [1, 2],
          [2, 1],
        ],
        [
          [1000, 0],
          [0, 1000],
        ],
      ).columnOf,
    ).toEqual([0, 1]);
  });
});

function makeCosts(
  random: ReturnType<typeof createSeededRandom>,
  rows: number,
  columns: number,
  forbidden: number,
) {
  return Array.from({ length: rows }, () =>
    Array.from({ length: columns }, () =>
      random.chance(forbidden) ? X : random.int(random.chance(0.5) ? 4 : 60),
    ),
  );
}

describe("second opinions (rule 9.7)", () => {
  it("equals brute force on 3000 small cases, forbidden pairs among them", () => {
    const random = createSeededRandom("assign brute force");
    for (let i = 0; i < 3000; i += 1) {
      const costs = makeCosts(random, 1 + random.int(5), 1 + random.int(5), [0, 0.2, 0.6][i % 3] ?? 0);
      const { pairs, cost } = assign(costs);
      expect({ pairs, cost }, JSON.stringify(costs)).toEqual(minimiseByTrial(costs));
    }
  });

  it("equals munkres-js on random squares of up to 60", () => {
    const random = createSeededRandom("assign munkres");
    for (const size of [3, 8, 20, 40, 60]) {
      const costs = Array.from({ length: size }, () =>
        Array.from({ length: size }, () => random.int(10_000)),
      );
      const outside = computeMunkres(costs.map((row) => [...row]));
      const cost = outside.reduce((sum, [row, column]) => sum + (costs[row]?.[column] ?? X), 0);
      expect(assign(costs).cost).toBe(cost);
    }
  });

  it("gives no column twice", () => {
    const random = createSeededRandom("assign distinct");
    for (let i = 0; i < 200; i += 1) {
      const { columnOf } = assign(makeCosts(random, 1 + random.int(20), 1 + random.int(20), 0.5));
      const used = columnOf.filter((column) => column >= 0);
      expect(new Set(used).size).toBe(used.length);
    }
  });
});
