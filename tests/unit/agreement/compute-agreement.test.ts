import { describe, expect, it } from "vitest";
import { computeAgreement } from "@/lib/agreement/compute-agreement";
import type { Rating } from "@/lib/agreement/rating";
import { isAppError } from "@/lib/base/app-error";
import { DEFAULT_SCALES } from "@/lib/plot/grades";
import {
  EVERITT_COUNTS,
  KRIPPENDORFF_FOUR_OBSERVERS,
  SHROUT_SCORES,
} from "@/tests/support/agreement/published-tables";

const near = (value: number, digits: number) => ({
  value: expect.closeTo(value, digits),
  low: expect.any(Number),
  high: expect.any(Number),
});

/** Ratings from rows of grades, one for each rater; null is no rating. */
function toRatings(rows: readonly (readonly (string | number | null)[])[]): Rating[] {
  return rows.flatMap((row, rater) =>
    row.flatMap((grade, item) =>
      grade === null ? [] : [{ item: `${item}`, rater: `r${rater}`, grade: `${grade}` }],
    ),
  );
}

describe("four observers with missing ratings (Krippendorff 2011; check values 4.3 and 4.4)", () => {
  const rows = KRIPPENDORFF_FOUR_OBSERVERS.map((row) =>
    row.map((place) => (place === null ? null : place + 1)),
  );
  const agreement = computeAgreement(toRatings(rows), ["1", "2", "3", "4", "5"]);

  it("counts items, raters and ratings", () => {
    expect(agreement).toMatchObject({ items: 12, raters: 4, ratings: 41 });
  });

  it("alpha .74342 .81539 .84911, Fleiss .76117, AC1 .77544 with (0.461, 1)", () => {
    expect(agreement.alpha.nominal).toEqual(near(0.7434210526, 9));
    expect(agreement.alpha.ordinal).toEqual(near(0.8153875038, 9));
    expect(agreement.alpha.interval).toEqual(near(0.8491071429, 9));
    expect(agreement.fleiss).toEqual(near(0.76117, 5));
    // Interval: 0.77544 -+ 2.200985 * 0.14295, cut at 1.
    expect(agreement.ac1).toEqual({
      value: expect.closeTo(0.77544, 5),
      low: expect.closeTo(0.4608, 4),
      high: 1,
    });
  });

  it("what needs two raters, or every rating, is undefined and says why", () => {
    const two = { undefined: "needs exactly two raters; there are 4" };
    expect(agreement).toMatchObject({ exact: two, withinOne: two, bias: two });
    expect(agreement.kappa).toEqual({ unweighted: two, linear: two, quadratic: two });
    const complete = { undefined: "needs every rater's grade for every item; missing: 7" };
    expect(agreement.icc).toMatchObject({ "2,1": complete, "3,1": complete });
  });

  it("ICC(1,1) with unequal numbers of ratings, as R 4.2 anova(lm) and n0 = 3.40 give it", () => {
    expect(agreement.icc["1,1"]).toEqual({
      value: expect.closeTo(0.849680315603, 10),
      low: expect.closeTo(0.678247949602, 8),
      high: expect.closeTo(0.948165088185, 8),
    });
  });
});

describe("Shrout and Fleiss 1979 as grades 1 to 10 (check values 4.5)", () => {
  const rows = [0, 1, 2, 3].map((judge) => SHROUT_SCORES.map((row) => row[judge] ?? 0));
  const scale = Array.from({ length: 10 }, (_, i) => `${i + 1}`);

  it("ICC .16574 .28976 .71484 with their intervals", () => {
    const { icc } = computeAgreement(toRatings(rows), scale);
    const rounded = (value: number, low: number, high: number) => ({
      value: expect.closeTo(value, 5),
      low: expect.closeTo(low, 4),
      high: expect.closeTo(high, 4),
    });
    expect(icc).toEqual({
      "1,1": rounded(0.16574, -0.1329, 0.7226),
      "2,1": rounded(0.28976, 0.0188, 0.7611),
      "3,1": rounded(0.71484, 0.3425, 0.9459),
    });
  });
});

describe("two raters (Fleiss, Cohen and Everitt 1969; check values 4.1)", () => {
  const pairs = EVERITT_COUNTS.flatMap((row, i) =>
    row.flatMap((count, j) => Array.from({ length: count }, () => [i, j] as const)),
  );
  const ratings = toRatings([pairs.map(([first]) => first), pairs.map(([, second]) => second)]);
  const agreement = computeAgreement(ratings, ["0", "1", "2"]);

  it("exact 140 of 200, within one 194 of 200", () => {
    expect(agreement.exact).toMatchObject({ value: 0.7 });
    expect(agreement.withinOne).toMatchObject({ value: 0.97 });
  });

  it("bias is the second rater less the first, in steps", () => {
    expect(agreement.bias).toMatchObject({ value: expect.closeTo((10 + 8 + 10 - 22 - 4 - 12) / 200, 12) });
  });

  it("kappa 0.4285714, linear 0.4923077, quadratic 0.5666667", () => {
    expect(agreement.kappa).toEqual({
      unweighted: near(0.4285714, 7),
      linear: near(0.4923077, 7),
      quadratic: near(0.5666667, 7),
    });
  });

  it("unused grades of the scale change AC1 and leave kappa and alpha alone (check values 11.7)", () => {
    const wider = computeAgreement(ratings, ["0", "1", "2", "3", "4"]);
    expect(wider.kappa.unweighted).toEqual(agreement.kappa.unweighted);
    expect(wider.kappa.quadratic).toEqual(near(0.5666667, 7));
    expect(wider.alpha).toEqual(agreement.alpha);
    expect(wider.ac1).not.toEqual(agreement.ac1);
  });

  it("prints exactly the keys of the command, in order", () => {
    expect(JSON.stringify(agreement).replaceAll(/"(value|low|high)":-?[\d.e-]+/g, '"$1":0')).toBe(
      JSON.stringify({
        items: 200,
        raters: 2,
        ratings: 400,
        ...Object.fromEntries(
          ["exact", "withinOne", "bias"].map((key) => [key, { value: 0, low: 0, high: 0 }]),
        ),
        kappa: Object.fromEntries(
          ["unweighted", "linear", "quadratic"].map((key) => [key, { value: 0, low: 0, high: 0 }]),
        ),
        fleiss: { value: 0, low: 0, high: 0 },
        alpha: Object.fromEntries(
          ["nominal", "ordinal", "interval"].map((key) => [key, { value: 0, low: 0, high: 0 }]),
        ),
        ac1: { value: 0, low: 0, high: 0 },
        icc: Object.fromEntries(["1,1", "2,1", "3,1"].map((key) => [key, { value: 0, low: 0, high: 0 }])),
      }),
    );
  });
});

describe("edges", () => {
  const { clarity } = DEFAULT_SCALES;

  it("no rating: counts of 0, everything undefined", () => {
    const agreement = computeAgreement([], clarity);
    expect(agreement).toMatchObject({ items: 0, raters: 0, ratings: 0 });
    expect(agreement.exact).toEqual({ undefined: "needs exactly two raters; there are 0" });
    expect(agreement.alpha.nominal).toEqual({ undefined: "needs two raters or more; there are 0" });
    expect(JSON.stringify(agreement)).not.toContain('"value"');
  });

  it("one rater: everything undefined", () => {
    const agreement = computeAgreement(toRatings([["VS1", "VS2", "SI1"]]), clarity);
    expect(agreement.kappa.linear).toEqual({ undefined: "needs exactly two raters; there is 1" });
    expect(agreement.icc["1,1"]).toEqual({ undefined: "needs two raters or more; there is 1" });
    expect(JSON.stringify(agreement)).not.toContain('"value"');
  });

  it("one grade only: kappa, alpha and ICC are undefined, exact agreement is not", () => {
    const agreement = computeAgreement(
      toRatings([
        ["VS1", "VS1", "VS1"],
        ["VS1", "VS1", "VS1"],
      ]),
      clarity,
    );
    expect(agreement.exact).toMatchObject({ value: 1, high: 1 });
    for (const statistic of [
      ...Object.values(agreement.kappa),
      ...Object.values(agreement.alpha),
      ...Object.values(agreement.icc),
      agreement.fleiss,
    ]) {
      expect(statistic).toEqual({ undefined: expect.any(String) });
    }
  });

  it("two raters who share no item", () => {
    const agreement = computeAgreement(
      toRatings([
        ["VS1", null],
        [null, "VS2"],
      ]),
      clarity,
    );
    const none = { undefined: "no item was rated by both raters" };
    expect(agreement).toMatchObject({ exact: none, withinOne: none, bias: none, kappa: { linear: none } });
    expect(agreement.fleiss).toEqual({ undefined: "no item was rated by two raters" });
  });

  it("one item: values with intervals that claim nothing", () => {
    const agreement = computeAgreement(toRatings([["VS1"], ["VS2"]]), clarity);
    expect(agreement.bias).toEqual({ value: 1, low: -9, high: 9 });
    expect(agreement.kappa.unweighted).toEqual({ value: 0, low: -1, high: 1 });
    expect(agreement.icc["2,1"]).toEqual({ undefined: "fewer than two items were rated" });
  });

  it("the first rater is the first to appear", () => {
    const rows: Rating[] = [
      { item: "1", rater: "z", grade: "VS1" },
      { item: "1", rater: "a", grade: "SI1" },
    ];
    expect(computeAgreement(rows, clarity).bias).toMatchObject({ value: 2 });
    expect(computeAgreement([...rows].reverse(), clarity).bias).toMatchObject({ value: -2 });
  });

  it("refuses a grade off the scale and a second grade, with where", () => {
    const off = [{ item: "1", rater: "a", grade: "VS9" }];
    const twice = [
      { item: "1", rater: "a", grade: "VS1", row: 2 },
      { item: "1", rater: "a", grade: "VS1", row: 9 },
    ];
    const refuse = (ratings: Rating[]) => {
      try {
        computeAgreement(ratings, clarity);
      } catch (thrown) {
        if (isAppError(thrown, "bad-input")) return thrown.faults.map((fault) => fault.path);
      }
      return [];
    };
    expect(refuse(off)).toEqual(["ratings[0]"]);
    expect(refuse(twice)).toEqual(["row 9"]);
  });
});
