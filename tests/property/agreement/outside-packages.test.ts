/** Random tables, computed here and by packages of others: krippendorff 0.1.0, simple-statistics 7.12.1, munkres-js 1.2.2. */
import fc from "fast-check";
import { alpha } from "krippendorff";
import munkres from "munkres-js";
import { gammaln, mean, quantile, sampleCorrelation, sampleStandardDeviation } from "simple-statistics";
import { describe, expect, it } from "vitest";
import { computeSortedQuantile } from "@/lib/agreement/bootstrap-interval";
import { computeLogGamma } from "@/lib/agreement/incomplete-beta";
import { computeIcc, computeMeanSquares } from "@/lib/agreement/intraclass-correlation";
import { computeItemStatistics, computePointBiserial } from "@/lib/agreement/item-statistics";
import { type AlphaMetric, computeKrippendorffAlpha } from "@/lib/agreement/krippendorff-alpha";
import { solveAssignment } from "@/lib/agreement/solve-assignment";
import { isDefined } from "@/lib/agreement/statistic";
import { groupUnitPatterns, toUnitCounts } from "@/lib/agreement/unit-patterns";

type Ratings = (number | null)[][];

/** Two to five raters, two to twelve units, up to six grades, a fifth of the ratings missing. */
const ratings: fc.Arbitrary<Ratings> = fc
  .tuple(fc.integer({ min: 2, max: 5 }), fc.integer({ min: 2, max: 12 }), fc.integer({ min: 2, max: 6 }))
  .chain(([raters, units, categories]) => {
    const one = fc.option(fc.nat(categories - 1), { freq: 4 });
    return fc.array(fc.array(one, { minLength: units, maxLength: units }), {
      minLength: raters,
      maxLength: raters,
    });
  });

/** How often each grade stands among the values that can be paired. */
function listMargins(table: Ratings): number[] {
  const margins = new Array<number>(6).fill(0);
  for (const [unit] of (table[0] ?? []).entries()) {
    const given = table.flatMap((row) => row[unit] ?? []);
    if (given.length > 1) for (const grade of given) margins[grade] = (margins[grade] ?? 0) + 1;
  }
  return margins;
}

function getMetric(metric: AlphaMetric, margins: readonly number[]): (a: number, b: number) => number {
  if (metric === "nominal") return (a, b) => (a === b ? 0 : 1);
  if (metric === "interval") return (a, b) => (a - b) ** 2;
  if (metric === "ratio") return (a, b) => (a === b ? 0 : ((a - b) / (a + b + 2)) ** 2); // places stand for 1, 2, 3 …
  return (a, b) => {
    if (a === b) return 0;
    const between = margins.slice(Math.min(a, b), Math.max(a, b) + 1).reduce((sum, count) => sum + count, 0);
    return (between - ((margins[a] ?? 0) + (margins[b] ?? 0)) / 2) ** 2;
  };
}

describe("Krippendorff's alpha against the package krippendorff", () => {
  it.each(["nominal", "ordinal", "interval", "ratio"] as const)("%s", (metric) => {
    let compared = 0;
    fc.assert(
      fc.property(ratings, (table) => {
        const ours = computeKrippendorffAlpha(groupUnitPatterns(toUnitCounts(table, 6), 6), metric, {
          values: [1, 2, 3, 4, 5, 6],
          resamples: 2,
        });
        const theirs = alpha<number>(
          table.map((row) => row.map((grade) => grade ?? undefined)),
          getMetric(metric, listMargins(table)),
        );
        if (!isDefined(ours)) {
          expect(Number.isNaN(theirs)).toBe(true);
          return;
        }
        compared += 1;
        expect(ours.value).toBeCloseTo(theirs, 9);
      }),
      { numRuns: 300 },
    );
    expect(compared).toBeGreaterThan(200);
  });
});

describe("item statistics against simple-statistics", () => {
  const answers = fc
    .tuple(fc.integer({ min: 2, max: 30 }), fc.integer({ min: 2, max: 6 }))
    .chain(([persons, items]) =>
      fc.array(fc.array(fc.nat(1), { minLength: items, maxLength: items }), {
        minLength: persons,
        maxLength: persons,
      }),
    );

  it("mean, standard deviation and correlations", () => {
    let compared = 0;
    fc.assert(
      fc.property(answers, (rows) => {
        const ours = computeItemStatistics(rows);
        const scores = rows.map((row) => row.reduce((sum, answer) => sum + answer, 0));
        expect(ours.mean).toEqual({ value: expect.closeTo(mean(scores), 10) });
        expect(ours.standardDeviation).toEqual({
          value: expect.closeTo(sampleStandardDeviation(scores), 10),
        });
        for (const [i, item] of ours.items.entries()) {
          if (!isDefined(item.pointBiserial)) continue;
          compared += 1;
          const column = rows.map((row) => row[i] ?? 0);
          expect(item.pointBiserial.value).toBeCloseTo(sampleCorrelation(column, scores), 9);
        }
      }),
      { numRuns: 200 },
    );
    expect(compared).toBeGreaterThan(200);
  });

  it("ICC(3,1) of two judges of equal spread is their correlation", () => {
    const judges = fc
      .array(fc.nat(9), { minLength: 3, maxLength: 20 })
      .filter((list) => new Set(list).size > 1);
    fc.assert(
      fc.property(judges, fc.nat(), (first, turn) => {
        const second = first.map((_, i) => first[(i + turn) % first.length] ?? 0);
        const icc = computeIcc(computeMeanSquares(first.map((score, i) => [score, second[i] ?? 0])), "3,1");
        const correlation = computePointBiserial(first, second);
        if (!isDefined(icc) || !isDefined(correlation)) throw new Error("must be defined");
        expect(icc.value).toBeCloseTo(sampleCorrelation(first, second), 9);
        expect(correlation.value).toBeCloseTo(icc.value, 9);
      }),
    );
  });

  it("log gamma (theirs is a series of lower precision) and quantiles", () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 500, noNaN: true }), (x) => {
        expect(computeLogGamma(x) - gammaln(x)).toBeCloseTo(0, 6);
      }),
    );
    const sorted = [0, 1, 4, 9, 16];
    for (const p of [0.25, 0.5, 0.75]) expect(computeSortedQuantile(sorted, p)).toBe(quantile(sorted, p));
  });
});

describe("the assignment of the set distances against munkres-js", () => {
  it("has the same cost on every rectangular table", () => {
    const costs = fc
      .tuple(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 1, max: 7 }))
      .chain(([rows, columns]) =>
        fc.array(fc.array(fc.nat(20), { minLength: columns, maxLength: columns }), {
          minLength: rows,
          maxLength: rows,
        }),
      );
    fc.assert(
      fc.property(costs, (table) => {
        const ours = solveAssignment(table);
        const used = ours.filter((column) => column >= 0);
        expect(new Set(used).size).toBe(Math.min(table.length, table[0]?.length ?? 0));
        const cost = ours.reduce((sum, column, row) => sum + (table[row]?.[column] ?? 0), 0);
        const theirs = munkres(table).reduce((sum, [row, column]) => sum + (table[row]?.[column] ?? 0), 0);
        expect(cost).toBe(theirs);
      }),
      { numRuns: 300 },
    );
  });
});
