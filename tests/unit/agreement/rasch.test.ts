import { describe, expect, it } from "vitest";
import { fitRasch, type RaschFit, type RaschPlace } from "@/lib/agreement/fit-rasch";
import type { RaschResponse } from "@/lib/agreement/rasch-responses";
import { createSeededRandom } from "@/lib/base/seeded-random";
import { LSAT_SIX } from "@/tests/support/agreement/published-tables";

const toResponses = (rows: readonly (readonly (0 | 1 | null)[])[]): RaschResponse[] =>
  rows.flatMap((row, p) =>
    row.flatMap((answer, i) =>
      answer === null ? [] : [{ person: `p${p}`, item: `i${i}`, right: answer === 1 }],
    ),
  );

function getValue(place: RaschPlace | undefined): { value: number; standardError: number } {
  if (!place || !("value" in place)) throw new Error(`no value: ${JSON.stringify(place)}`);
  return place;
}

const listEasiness = (fit: RaschFit) => fit.items.map((item) => getValue(item.easiness).value);

describe("LSAT section 6, conditional maximum likelihood (check values 7.2, R eRm 1.0-2)", () => {
  const fit = fitRasch(toResponses(LSAT_SIX));

  it("easiness 1.2561280 -0.4749071 -1.2359806 -0.1684101 0.6231699, to eRm's own tolerance", () => {
    const printed = [1.256128, -0.4749071, -1.2359806, -0.1684101, 0.6231699];
    const easiness = listEasiness(fit);
    for (const [i, value] of printed.entries()) expect(easiness[i]).toBeCloseTo(value, 5);
    expect(easiness.reduce((sum, value) => sum + value, 0)).toBeCloseTo(0, 10);
  });

  it("conditional log-likelihood -1091.57", () => {
    expect(fit.logLikelihood).toEqual({ value: expect.closeTo(-1091.57, 2) });
  });

  it("standard errors of the items as eRm gives them (se.beta: .104406 .069917 .068778 .072619 .085917)", () => {
    const errors = fit.items.map((item) => getValue(item.easiness).standardError);
    const printed = [0.104405672, 0.069917065, 0.068777691, 0.072619449, 0.085917416];
    for (const [i, value] of printed.entries()) expect(errors[i]).toBeCloseTo(value, 4);
    expect(fit.itemErrors).toBe("exact");
  });

  const abilities: [number, number, number][] = [
    [1, -1.6015334, 1.181],
    [2, -0.4743284, 0.9898],
    [3, 0.4808631, 0.9874],
    [4, 1.5999474, 1.1768],
  ];
  it.each(abilities)("score %i: ability %f with standard error %f", (score, ability, error) => {
    const place = getValue(fit.persons.find((person) => person.right === score)?.ability);
    expect(place.value).toBeCloseTo(ability, 5);
    expect(place.standardError).toBeCloseTo(error, 3); // eRm takes them from a numeric second derivative
  });

  it("scores 0 and 5 are beyond range, not numbers", () => {
    const none = fit.persons.find((person) => person.right === 0)?.ability;
    const all = fit.persons.find((person) => person.right === 5)?.ability;
    expect(none).toEqual({ beyond: "below", undefined: expect.stringContaining("beyond range") });
    expect(all).toEqual({ beyond: "above", undefined: expect.stringContaining("beyond range") });
  });

  it("fulfils the conditional likelihood equations, by enumeration of all answer patterns", () => {
    const easiness = listEasiness(fit);
    const patterns = Array.from({ length: 32 }, (_, code) => [0, 1, 2, 3, 4].map((i) => (code >> i) & 1));
    const weigh = (pattern: number[]) =>
      Math.exp(pattern.reduce((sum, answer, i) => sum + answer * (easiness[i] ?? 0), 0));
    const sumOf = (pattern: readonly number[]) => pattern.reduce((sum, answer) => sum + answer, 0);
    for (let item = 0; item < 5; item += 1) {
      let expected = 0;
      for (let score = 1; score < 5; score += 1) {
        const persons = LSAT_SIX.filter((row) => sumOf(row) === score).length;
        const same = patterns.filter((pattern) => sumOf(pattern) === score);
        const all = same.reduce((sum, pattern) => sum + weigh(pattern), 0);
        const right = same.reduce((sum, pattern) => sum + (pattern[item] ?? 0) * weigh(pattern), 0);
        expected += (persons * right) / all;
      }
      const observed = LSAT_SIX.filter((row) => sumOf(row) > 0 && sumOf(row) < 5 && row[item] === 1).length;
      expect(expected).toBeCloseTo(observed, 5);
    }
  });
});

describe("students who sat different items", () => {
  /** Two forms of the test, three items in common. */
  function simulate(persons: number, items: number): { responses: RaschResponse[]; easiness: number[] } {
    const random = createSeededRandom("two forms");
    const easiness = Array.from({ length: items }, (_, i) => 1.5 - (3 * i) / (items - 1));
    const rows = Array.from({ length: persons }, (_, p) => {
      const ability = random.normal(p % 2 === 0 ? -0.7 : 0.7, 1);
      return easiness.map((value, i): 0 | 1 | null => {
        const isSeen = p % 2 === 0 ? i < items / 2 + 2 : i >= items / 2 - 2;
        const isRight = random.chance(1 / (1 + Math.exp(-(ability + value))));
        return isSeen ? (isRight ? 1 : 0) : null;
      });
    });
    return { responses: toResponses(rows), easiness };
  }

  it("puts items of both forms on one scale, within four standard errors of the truth", () => {
    const { responses, easiness } = simulate(2000, 12);
    const fit = fitRasch(responses);
    for (const [i, truth] of easiness.entries()) {
      const item = fit.items.find((one) => one.item === `i${i}`);
      const { value, standardError } = getValue(item?.easiness);
      expect(Math.abs(value - truth)).toBeLessThan(4 * standardError);
      expect(standardError).toBeLessThan(0.15);
    }
  });

  it("corrects for whom an item was given to: raw shares would misplace the forms", () => {
    const { responses } = simulate(2000, 12);
    const fit = fitRasch(responses);
    const [first, last] = [
      fit.items.find((one) => one.item === "i0"),
      fit.items.find((one) => one.item === "i11"),
    ];
    const logit = (right = 0, seen = 1) => Math.log(right / (seen - right));
    const raw = logit(first?.right, first?.seen) - logit(last?.right, last?.seen);
    const fitted = getValue(first?.easiness).value - getValue(last?.easiness).value;
    expect(Math.abs(fitted - 3)).toBeLessThan(Math.abs(raw - 3));
  });

  it("a long test, whose item errors are approximate, recovers the truth as well", () => {
    const random = createSeededRandom("long");
    const easiness = Array.from({ length: 60 }, () => random.normal(0, 1));
    const mean = easiness.reduce((sum, value) => sum + value, 0) / 60;
    const rows = Array.from({ length: 300 }, () => {
      const ability = random.normal(0, 1);
      return easiness.map((value): 0 | 1 => (random.chance(1 / (1 + Math.exp(-(ability + value)))) ? 1 : 0));
    });
    const fit = fitRasch(toResponses(rows));
    expect(fit.itemErrors).toBe("approximate");
    const standardised = fit.items.map((item, i) => {
      const { value, standardError } = getValue(item.easiness);
      return (value - ((easiness[i] ?? 0) - mean)) / standardError;
    });
    const meanSquare = standardised.reduce((sum, z) => sum + z * z, 0) / 60;
    expect(meanSquare).toBeGreaterThan(0.5);
    expect(meanSquare).toBeLessThan(1.7);
  });
});

describe("what cannot be placed", () => {
  it("items that all or none got right are beyond range and do not disturb the others", () => {
    const plain: (0 | 1)[][] = [
      [1, 0, 0],
      [0, 1, 0],
      [1, 1, 0],
      [0, 0, 1],
      [1, 0, 1],
      [1, 0, 0],
    ];
    const widened = plain.map((row): (0 | 1)[] => [...row, 1, 0]);
    const [narrow, wide] = [fitRasch(toResponses(plain)), fitRasch(toResponses(widened))];
    expect(wide.items[3]?.easiness).toMatchObject({ beyond: "above" });
    expect(wide.items[4]?.easiness).toMatchObject({ beyond: "below" });
    for (let i = 0; i < 3; i += 1) {
      expect(getValue(wide.items[i]?.easiness).value).toBeCloseTo(
        getValue(narrow.items[i]?.easiness).value,
        7,
      );
    }
  });

  it("items in a strict order of difficulty (a Guttman scale) have no finite estimate: undefined, with the reason", () => {
    const fit = fitRasch(
      toResponses([
        [0, 0, 0],
        [1, 0, 0],
        [1, 1, 0],
        [1, 1, 1],
      ]),
    );
    for (const item of fit.items) expect(item.easiness).toHaveProperty("undefined");
    expect(fit.logLikelihood).toEqual({ undefined: "no two items can be compared" });
    expect(fit.persons[0]?.ability).toMatchObject({ beyond: "below" });
    expect(fit.persons[3]?.ability).toMatchObject({ beyond: "above" });
    expect(fit.persons[1]?.ability).toEqual({ undefined: expect.stringContaining("compared") });
  });

  it("two groups of items that nobody links: the larger is placed, the other undefined", () => {
    const fit = fitRasch(
      toResponses([
        [1, 0, 0, null, null],
        [0, 1, 0, null, null],
        [0, 0, 1, null, null],
        [null, null, null, 1, 0],
        [null, null, null, 0, 1],
      ]),
    );
    expect(fit.items.slice(0, 3).every((item) => "value" in item.easiness)).toBe(true);
    expect(fit.items[3]?.easiness).toEqual({ undefined: expect.stringContaining("compare") });
    expect(fit.persons[3]?.ability).toEqual({ undefined: expect.stringContaining("compared") });
  });

  it("no response: no item, no person", () => {
    expect(fitRasch([])).toMatchObject({
      items: [],
      persons: [],
      logLikelihood: { undefined: expect.any(String) },
    });
  });

  it("refuses a second answer by the same person to the same item", () => {
    const twice = { person: "a", item: "b", right: true };
    expect(() => fitRasch([twice, twice])).toThrow(RangeError);
  });
});
