/** Overrules (lib/scoring/SPEC.md 10 and 9.8). A run that once failed keeps its seed in the list of its test. */
import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { createSeededRandom } from "@/lib/base/seeded-random";
import { GRADED_PROPERTIES } from "@/lib/plot/grades";
import { CAUSES } from "@/lib/plot/mark";
import { isReplacedBy, type Overrule, PLACE_CREDITS, type Ruling } from "@/lib/plot/overrule";
import { ScoredPlotSchema } from "@/lib/plot/score-result";
import { scorePlot } from "@/lib/scoring/score-plot";
import { makeInput, makePlot, makeReference } from "@/tests/support/scoring/make-case";

vi.setConfig({ testTimeout: 120_000 });

/** Ids that the plot and the reference have, and some that neither has. */
const mark = fc.integer({ min: 1, max: 12 }).map((n) => `m${n}`);
const reference = fc.integer({ min: 1, max: 9 }).map((n) => `r${n}`);
const ruling: fc.Arbitrary<Ruling> = fc.oneof(
  fc.record({
    kind: fc.constant("together" as const),
    reference,
    mark,
    place: fc.constantFrom(...PLACE_CREDITS),
  }),
  fc.record({ kind: fc.constant("apart" as const), reference, mark }),
  fc.record({ kind: fc.constant("cause" as const), mark, cause: fc.constantFrom(...CAUSES, null) }),
  fc.record({
    kind: fc.constant("grade" as const),
    property: fc.constantFrom(...GRADED_PROPERTIES),
    credit: fc.double({ min: 0, max: 1, noNaN: true }),
  }),
);
const overrules = (rulings: readonly Ruling[]): Overrule[] =>
  rulings.map((one, at) => ({ id: `o${at + 1}`, ruling: one, reason: `because ${at + 1}` }));
const scene = fc.record({
  seed: fc.nat(9999),
  count: fc.integer({ min: 0, max: 7 }),
  rulings: fc.array(ruling, { maxLength: 6 }),
});

function makeScene({ seed, count }: { seed: number; count: number }) {
  const key = String(seed);
  const source = makeReference(key, count, { optional: 0.2 });
  return makeInput(source, makePlot(key, source, { strays: 4, overlooked: 0.3, scatter: 0.04 }));
}
type Scored = ReturnType<typeof scorePlot>;

const toHundredths = (points: number) => Math.round(points * 100);

function check<T>(arbitrary: fc.Arbitrary<T>, holds: (value: T) => void, numRuns: number) {
  fc.assert(fc.property(arbitrary, holds), { seed: 20_261, numRuns });
}

/** Every plotted mark is found, stray or set aside, just once; every reference mark that counts found or overlooked. */
function expectWhole({ result, detail }: Scored, input: ReturnType<typeof makeScene>) {
  const finders = new Set(result.found.map((one) => one.mark));
  const told = [
    ...finders,
    ...result.strays.map((one) => one.mark),
    ...detail.setAside.map((one) => one.mark),
  ];
  expect([...told].sort()).toEqual(input.plot.marks.map(({ id }) => id).sort());
  const counted = input.reference.marks.filter(({ optional }) => optional !== true).map(({ id }) => id);
  expect([...result.found.map((one) => one.reference), ...result.overlooked].sort()).toEqual(counted.sort());
}

describe("rule 10.1", () => {
  it("no overrules are the identity, to the byte", () => {
    check(
      scene,
      (one) => {
        const input = makeScene(one);
        expect(JSON.stringify(scorePlot({ ...input, overrules: [] }))).toBe(JSON.stringify(scorePlot(input)));
      },
      60,
    );
  });

  it("a later one takes the place of an earlier one, and their order changes nothing else", () => {
    check(
      fc.tuple(scene, fc.nat()),
      ([one, seed]) => {
        const input = makeScene(one);
        const all = overrules(one.rulings);
        const standing = all.filter(
          ({ ruling: earlier }, at) =>
            !all.slice(at + 1).some((later) => isReplacedBy(earlier, later.ruling)),
        );
        const whole = scorePlot({ ...input, overrules: all });
        expect(scorePlot({ ...input, overrules: standing }).result).toEqual(whole.result);
        // Words about one reference mark follow the order of the rulings on it; no number does.
        const mixed = scorePlot({ ...input, overrules: createSeededRandom(String(seed)).shuffle(standing) });
        const bare = ({ lines, ...rest }: Scored["result"]) => ({
          ...rest,
          lines: lines.map(({ points }) => points),
        });
        expect(bare(mixed.result)).toEqual(bare(whole.result));
      },
      120,
    );
  });
});

describe("rule 9.8", () => {
  it("0 <= total <= 100, the lines add up, the schemas take it, and every overrule has one fate", () => {
    check(
      scene,
      (one) => {
        const input = makeScene(one);
        const scored = scorePlot({ ...input, overrules: overrules(one.rulings) });
        expect(ScoredPlotSchema.parse(JSON.parse(JSON.stringify(scored)))).toEqual(scored);
        const { total, lines } = scored.result;
        expect(lines.reduce((sum, { points }) => sum + toHundredths(points), 0)).toBe(toHundredths(total));
        expect(total).toBeGreaterThanOrEqual(0);
        expect(total).toBeLessThanOrEqual(100);
        expect(scored.detail.overrules.map(({ overruleId }) => overruleId)).toEqual(
          one.rulings.map((_, at) => `o${at + 1}`),
        );
        for (const { applies, why } of scored.detail.overrules) expect(why === null).toBe(applies);
        expectWhole(scored, input);
      },
      250,
    );
  });

  it("order of marks and references changes nothing", () => {
    check(
      fc.tuple(scene, fc.nat()),
      ([one, seed]) => {
        const input = { ...makeScene(one), overrules: overrules(one.rulings) };
        const random = createSeededRandom(String(seed));
        const mixed = {
          ...input,
          reference: { ...input.reference, marks: random.shuffle(input.reference.marks) },
          plot: { ...input.plot, marks: random.shuffle(input.plot.marks) },
        };
        expect(scorePlot(mixed)).toEqual(scorePlot(input));
      },
      80,
    );
  });
});

describe("rules 10.3 to 10.7: an overrule that applies does what it says, and the lines name it", () => {
  it("whatever the plot", () => {
    check(
      scene,
      (one) => {
        const input = makeScene(one);
        const all = overrules(one.rulings);
        const { result, detail } = scorePlot({ ...input, overrules: all });
        const lines = result.lines.map(({ what }) => what).join("\n");
        const optional = new Set(input.reference.marks.filter((r) => r.optional).map(({ id }) => id));
        const none = result.lines.some(({ what }) => what.startsWith("nothing to find"));
        all.forEach(({ ruling: said, reason }, at) => {
          if (!detail.overrules[at]?.applies) return;
          const isPair = (p: { reference: string; mark: string }) =>
            said.kind !== "cause" &&
            said.kind !== "grade" &&
            p.reference === said.reference &&
            p.mark === said.mark;
          if (said.kind === "together") {
            expect([...result.found, ...detail.setAside].filter(isPair)).toHaveLength(1);
            const found = result.found.find(isPair);
            if (said.place === "full" && found) expect(found.location).toBe(1);
            if (said.place === "half" && found) expect(found.location).toBeGreaterThanOrEqual(0.5);
          } else if (said.kind === "apart") {
            expect([...result.found, ...detail.setAside].filter(isPair)).toHaveLength(0);
          } else if (said.kind === "cause") {
            const stray = result.strays.find((s) => s.mark === said.mark);
            if (said.cause !== null) expect(stray?.cause).toBe(said.cause);
            expect(stray?.because[0]).toContain(reason);
          }
          const isOptional = "reference" in said && optional.has(said.reference);
          if (!isOptional && !(none && "reference" in said)) expect(lines).toContain(reason);
        });
      },
      200,
    );
  });

  it("a stray that is not held against the plot costs nothing: the total never falls", () => {
    check(
      scene,
      (one) => {
        const input = makeScene(one);
        const before = scorePlot(input).result;
        for (const { mark: id } of before.strays) {
          const spared = scorePlot({
            ...input,
            overrules: overrules([{ kind: "cause", mark: id, cause: null }]),
          }).result;
          expect(spared.total).toBeGreaterThanOrEqual(before.total);
          expect(spared.strays).toHaveLength(before.strays.length);
        }
      },
      40,
    );
  });

  it("a grade in full earns its worth, and one of nothing earns nothing", () => {
    const input = makeScene({ seed: 7, count: 5 });
    const clarity = (credit: number) =>
      scorePlot({ ...input, overrules: overrules([{ kind: "grade", property: "clarity", credit }]) }).result
        .total;
    // The rubric's share of clarity (scoring.md 6): 20.
    expect(toHundredths(clarity(1)) - toHundredths(clarity(0))).toBe(2000);
  });
});
