import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clusterPlaces, type MarkedPlace } from "@/lib/agreement/cluster-places";
import { EVIDENCE_RULES, findFewestEnough } from "@/lib/agreement/judge-cluster";
import { createSeededRandom } from "@/lib/base/seeded-random";

const place = fc.record({
  view: fc.constantFrom<"crown" | "pavilion">("crown", "pavilion"),
  at: fc.tuple(
    fc.integer({ min: -12, max: 12 }).map((n) => n / 25),
    fc.integer({ min: -12, max: 12 }).map((n) => n / 25),
  ),
  by: fc.integer({ min: 0, max: 7 }).map((n) => `s${n}`),
});
const places = fc.array(place, { maxLength: 60 });
const OPTIONS = { radius: 0.05, fewest: 2 };
const tell = (found: ReturnType<typeof clusterPlaces>) =>
  found.map(({ view, at, people, places: own, spread }) => [view, at, people, own.length, spread]);

describe("clusters of places", () => {
  it("are the same in whatever order places come", () => {
    fc.assert(
      fc.property(
        places.chain((list) =>
          fc.tuple(fc.constant(list), fc.shuffledSubarray(list, { minLength: list.length })),
        ),
        ([list, shuffled]) => {
          expect(tell(clusterPlaces(shuffled, OPTIONS))).toEqual(tell(clusterPlaces(list, OPTIONS)));
        },
      ),
    );
  });

  it("hold each place once, within the radius of the centre, and count people by themselves", () => {
    fc.assert(
      fc.property(places, (list) => {
        const found = clusterPlaces(list, OPTIONS);
        const all = found.flatMap((one) => one.places);
        expect(new Set(all).size).toBe(all.length);
        for (const one of found) {
          expect(one.people).toBe(new Set(one.places.map(({ by }) => by)).size);
          expect(one.people).toBeGreaterThanOrEqual(OPTIONS.fewest);
          for (const { view, at } of one.places) {
            expect(view).toBe(one.view);
            expect(Math.hypot(at[0] - one.at[0], at[1] - one.at[1])).toBeLessThanOrEqual(
              OPTIONS.radius + 1e-12,
            );
          }
        }
      }),
    );
  });

  it("count a student who marks a place many times once", () => {
    fc.assert(
      fc.property(places, fc.integer({ min: 1, max: 5 }), (list, times) => {
        const often = list.flatMap((one) => Array.from({ length: times }, () => ({ ...one })));
        const people = (from: readonly MarkedPlace[]) =>
          clusterPlaces(from, OPTIONS).map((one) => one.people);
        expect(people(often)).toEqual(people(list));
      }),
    );
  });

  it("leave no place with enough people round it, set-aside fringes apart", () => {
    fc.assert(
      fc.property(places, (list) => {
        const found = clusterPlaces(list, OPTIONS);
        const free = list.filter(
          ({ view, at }) =>
            !found.some(
              (one) =>
                one.view === view && Math.hypot(at[0] - one.at[0], at[1] - one.at[1]) <= 2 * OPTIONS.radius,
            ) && !found.some((one) => one.places.some((own) => own.view === view && own.at === at)),
        );
        for (const one of free) {
          const round = free.filter(
            ({ view, at }) =>
              view === one.view && Math.hypot(at[0] - one.at[0], at[1] - one.at[1]) <= OPTIONS.radius,
          );
          expect(new Set(round.map(({ by }) => by)).size).toBeLessThan(OPTIONS.fewest);
        }
      }),
    );
  });
});

/** Strays strewn evenly over both views of a round stone. */
function strew(seed: number, students: number, each: number): MarkedPlace[] {
  const random = createSeededRandom(seed);
  return Array.from({ length: students * each }, (_, i): MarkedPlace => {
    const radius = 0.5 * Math.sqrt(random.next());
    const angle = 2 * Math.PI * random.next();
    return {
      view: random.next() < 0.5 ? "crown" : "pavilion",
      at: [radius * Math.cos(angle), radius * Math.sin(angle)],
      by: `s${Math.floor(i / each)}`,
    };
  });
}

/** What would be suggested: the clusters of each view that are enough. */
function listEnough(list: readonly MarkedPlace[], students: number) {
  return (["crown", "pavilion"] as const).flatMap((view) => {
    const own = list.filter((one) => one.view === view);
    const strays = new Map<string, number>();
    for (const { by } of own) strays.set(by, (strays.get(by) ?? 0) + 1);
    const fewest = findFewestEnough({ students, strays: [...strays.values()], area: Math.PI / 4 });
    return fewest === null ? [] : clusterPlaces(own, { radius: EVIDENCE_RULES.radius, fewest });
  });
}

describe("the threshold", () => {
  it.each([
    [12, 6],
    [40, 4],
    [120, 8],
  ])(
    "lets strays strewn at random pass on fewer than 3 of 100 stones (%i students with %i strays)",
    (students, each) => {
      const stones = Array.from({ length: 100 }, (_, seed) =>
        listEnough(strew(seed + 1, students, each), students),
      );
      expect(stones.filter((all) => all.length > 0).length).toBeLessThan(3);
    },
  );

  it("finds one true place among them, where it lies", () => {
    const students = 40;
    const random = createSeededRandom(5);
    const hidden: MarkedPlace[] = Array.from({ length: 14 }, (_, i) => ({
      view: "crown",
      at: [0.2 + 0.02 * (random.next() - 0.5), -0.1 + 0.02 * (random.next() - 0.5)],
      by: `s${i}`,
    }));
    const enough = listEnough([...strew(9, students, 4), ...hidden], students);
    expect(enough).toHaveLength(1);
    expect(enough[0]?.at[0]).toBeCloseTo(0.2, 1);
    expect(enough[0]?.people).toBeGreaterThanOrEqual(14);
  });
});
