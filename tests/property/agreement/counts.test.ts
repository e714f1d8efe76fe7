import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { addCounts, NO_COUNTS, sumCounts } from "@/lib/agreement/counts";
import { deriveRates } from "@/lib/agreement/derive-rates";
import { addTallies, getCount, sumTally, tallyNames } from "@/lib/agreement/tally";
import { anyCounts, SAMPLE_SCALE } from "@/tests/support/agreement/sample-counts";

const SCALES = { clarity: SAMPLE_SCALE, colour: SAMPLE_SCALE };
const toBytes = (value: unknown) => JSON.stringify(value);

describe("counts are a commutative monoid, byte for byte", () => {
  it("adding nothing changes nothing", () => {
    fc.assert(
      fc.property(anyCounts, (a) => {
        expect(toBytes(addCounts(a, NO_COUNTS))).toBe(toBytes(a));
        expect(toBytes(addCounts(NO_COUNTS, a))).toBe(toBytes(a));
      }),
    );
  });

  it("order does not matter", () => {
    fc.assert(
      fc.property(anyCounts, anyCounts, (a, b) => {
        expect(toBytes(addCounts(a, b))).toBe(toBytes(addCounts(b, a)));
      }),
    );
  });

  it("grouping does not matter", () => {
    fc.assert(
      fc.property(anyCounts, anyCounts, anyCounts, (a, b, c) => {
        expect(toBytes(addCounts(addCounts(a, b), c))).toBe(toBytes(addCounts(a, addCounts(b, c))));
      }),
    );
  });

  it("a program's rates are the same whether added by student or by section", () => {
    fc.assert(
      fc.property(fc.array(anyCounts, { maxLength: 8 }), fc.nat(8), (students, cut) => {
        const sections = [sumCounts(students.slice(0, cut)), sumCounts(students.slice(cut))];
        const shuffled = [...students].reverse();
        expect(toBytes(deriveRates(sumCounts(sections), SCALES))).toBe(
          toBytes(deriveRates(sumCounts(shuffled), SCALES)),
        );
      }),
    );
  });

  it("does not change what it adds", () => {
    fc.assert(
      fc.property(anyCounts, anyCounts, (a, b) => {
        const before = toBytes([a, b]);
        addCounts(a, b);
        expect(toBytes([a, b])).toBe(before);
      }),
    );
  });
});

describe("tallies", () => {
  const names = fc.array(fc.oneof(fc.string(), fc.constantFrom("__proto__", "constructor", "valueOf")));

  it("keep every name, also those that objects already have", () => {
    fc.assert(
      fc.property(names, names, (first, second) => {
        const sum = addTallies(tallyNames(first), tallyNames(second));
        const all = [...first, ...second];
        expect(sumTally(sum)).toBe(all.length);
        for (const name of all)
          expect(getCount(sum, name)).toBe(all.filter((other) => other === name).length);
        expect(toBytes(sum)).toBe(toBytes(tallyNames(all)));
      }),
    );
  });
});

describe("rates", () => {
  it("hold no number that is not finite, and every interval holds its value", () => {
    fc.assert(
      fc.property(anyCounts, (counts) => {
        const check = (node: unknown): void => {
          if (typeof node === "number") expect(Number.isFinite(node)).toBe(true);
          if (typeof node !== "object" || node === null) return;
          if ("low" in node && "high" in node && "value" in node) {
            expect(node.low).toBeLessThanOrEqual(node.value as number);
            expect(node.high).toBeGreaterThanOrEqual(node.value as number);
          }
          for (const inner of Object.values(node)) check(inner);
        };
        check(deriveRates(counts, SCALES));
      }),
    );
  });

  it("the free-response curve only rises as confidence falls", () => {
    fc.assert(
      fc.property(anyCounts, (counts) => {
        const points = deriveRates(counts, SCALES).freeResponse;
        for (const [i, point] of points.slice(1).entries()) {
          const before = points[i];
          expect(point.foundShare ?? 0).toBeGreaterThanOrEqual(before?.foundShare ?? 0);
          expect(point.straysPerPlot ?? 0).toBeGreaterThanOrEqual(before?.straysPerPlot ?? 0);
        }
      }),
    );
  });
});
