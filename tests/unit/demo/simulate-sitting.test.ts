import { describe, expect, it } from "vitest";
import { getDetectionChance } from "@/lib/demo/detection-chance";
import { type SimulatedStone, simulateSitting } from "@/lib/demo/simulate-sitting";
import { MIDDLING_SKILL, type StudentSkill } from "@/lib/demo/student-skill";
import { turnPoint } from "@/lib/gem/point";
import type { ReferenceMark } from "@/lib/plot/mark";
import { DEFAULT_RUBRIC } from "@/lib/plot/rubric";
import { mapVertices } from "@/lib/plot/shape";
import { listSimulatedStones } from "@/tests/support/list-simulated-stones";

const stones = listSimulatedStones();
const getStone = (id: string): SimulatedStone => {
  const found = stones.find(({ stone }) => stone.id === id);
  if (found === undefined) throw new Error(`no stone ${id}`);
  return found;
};

/** Sees everything, draws it where it is, calls it by its name, and nothing else. */
const FAULTLESS: StudentSkill = {
  ...MIDDLING_SKILL,
  scatter: 0,
  sizeScatter: 0,
  eye: 50,
  naming: 1,
  doubling: 0,
  otherView: 0,
  fragments: 0,
  merging: 0,
  wiping: 1,
  dustBurstsPerPlot: 0,
  dustDotsPerPlot: 0,
  echoesPerFeature: 0,
  glintsPerPlot: 0,
  imaginedPerPlot: 0,
  gullible: 0,
  turning: 0,
  halfFacetOff: 0,
  mirroring: 0,
  gradeBias: 0,
  gradeScatter: 0,
  secondThoughts: 0,
};

describe("a simulated sitting", () => {
  it("of a faultless student is the reference", () => {
    for (const simulated of stones) {
      const { plot, truth } = simulateSitting(simulated, FAULTLESS, "faultless");
      expect(truth.missed).toEqual([]);
      expect(plot.grades.clarity).toBe(simulated.stone.grades.clarity);
      const drawn = truth.origins.map(({ mark, origin }) => {
        const { view, characteristic, shape } = plot.marks.find(({ id }) => id === mark) ?? {};
        return { id: origin.kind === "feature" ? origin.reference : "", view, characteristic, shape };
      });
      const byId = (a: { id: string }, b: { id: string }) => (a.id < b.id ? -1 : 1);
      const real = simulated.stone.marks.map(({ id, view, characteristic, shape }) => ({
        id,
        view,
        characteristic,
        shape,
      }));
      expect(drawn.sort(byId)).toEqual(real.sort(byId));
    }
  });

  it("lays every mark back on its feature by the turn that the truth names", () => {
    const simulated = getStone("A-04");
    const { plot, truth } = simulateSitting(simulated, { ...FAULTLESS, turning: 1 }, "turned");
    expect(truth.heldTurnDeg).not.toBe(0);
    for (const { mark, origin } of truth.origins) {
      const plotted = plot.marks.find(({ id }) => id === mark);
      const reference = simulated.stone.marks.find(
        ({ id }) => origin.kind === "feature" && id === origin.reference,
      );
      if (plotted === undefined || reference === undefined)
        throw new Error("every mark has its feature here");
      const back = mapVertices(plotted.shape, (point) =>
        turnPoint(plotted.view, point, truth.layBackTurnDeg),
      );
      const flat = (mark: Pick<ReferenceMark, "shape">) =>
        mark.shape.kind === "dot" ? [...mark.shape.at] : mark.shape.points.flat();
      flat({ shape: back }).forEach((value, index) => {
        expect(value).toBeCloseTo(flat(reference)[index] ?? Number.NaN, 3);
      });
    }
  });

  it("mirrors the pavilion and nothing else", () => {
    const simulated = getStone("C-04");
    const plain = simulateSitting(simulated, FAULTLESS, "mirror");
    const mirrored = simulateSitting(simulated, { ...FAULTLESS, mirroring: 1 }, "mirror");
    expect(mirrored.truth.isPavilionMirrored).toBe(true);
    const toX = (marks: readonly { view: string; shape: ReferenceMark["shape"] }[], view: string) =>
      marks
        .filter((mark) => mark.view === view)
        .flatMap(({ shape }) => (shape.kind === "dot" ? [shape.at[0]] : shape.points.map(([x]) => x)));
    expect(toX(mirrored.plot.marks, "crown")).toEqual(toX(plain.plot.marks, "crown"));
    expect(toX(mirrored.plot.marks, "pavilion")).toEqual(toX(plain.plot.marks, "pavilion").map((x) => 0 - x));
  });

  it("draws a burst of dust as the rubric's dotting: quick dots in a row, none of them wiped", () => {
    const dusty = { ...FAULTLESS, wiping: 0, dustBurstsPerPlot: 3 };
    const { plot, truth } = simulateSitting(getStone("A-03"), dusty, "dusty");
    const isDust = new Set(
      truth.origins.flatMap(({ mark, origin }) =>
        origin.kind === "stray" && origin.cause === "dust" ? [mark] : [],
      ),
    );
    const { burstDots, burstGapMs } = DEFAULT_RUBRIC.dust;
    expect(isDust.size).toBeGreaterThanOrEqual(burstDots);
    for (const { id, shape, proofs, atMs } of plot.marks) {
      if (!isDust.has(id)) continue;
      expect(shape.kind).toBe("dot");
      expect(proofs ?? []).not.toContain("wiped");
      const neighbours = plot.marks.filter(
        (other) =>
          other.id !== id && isDust.has(other.id) && Math.abs((other.atMs ?? 0) - (atMs ?? 0)) <= burstGapMs,
      );
      expect(neighbours.length).toBeGreaterThan(0);
    }
  });

  it.each([
    ["double", { doubling: 1 }],
    ["echo", { echoesPerFeature: 2 }],
    ["glint", { glintsPerPlot: 3 }],
    ["fragment", { fragments: 1 }],
    ["unexplained", { imaginedPerPlot: 4 }],
    ["other-view", { gullible: 1 }],
  ] as const)("says of a stray that it is %s", (cause, more) => {
    const { truth } = simulateSitting(getStone("A-04"), { ...FAULTLESS, ...more }, cause);
    const causes = truth.origins.flatMap(({ origin }) => (origin.kind === "stray" ? [origin.cause] : []));
    expect(causes).toContain(cause);
  });

  it("names the features that were merged", () => {
    const { plot, truth } = simulateSitting(getStone("C-02"), { ...FAULTLESS, merging: 1 }, "merged");
    const merged = truth.origins.find(({ origin }) => origin.kind === "merged");
    expect(merged?.origin).toEqual({ kind: "merged", references: ["pin-a", "pin-b", "pin-c"] });
    expect(plot.marks.find(({ id }) => id === merged?.mark)?.characteristic).toBe("cloud");
  });
});

describe("the chance to see a feature", () => {
  const crystal: ReferenceMark = {
    id: "a",
    view: "crown",
    characteristic: "crystal",
    shape: {
      kind: "stroke",
      points: [
        [0, 0],
        [0.03, 0],
      ],
    },
    depth: 0.3,
  };
  const getChance = (more: Partial<ReferenceMark>) =>
    getDetectionChance({ ...crystal, ...more }, MIDDLING_SKILL);

  it("rises with size, and falls with depth, with paleness and in the pavilion", () => {
    expect(
      getChance({
        shape: {
          kind: "stroke",
          points: [
            [0, 0],
            [0.06, 0],
          ],
        },
      }),
    ).toBeGreaterThan(getChance({}));
    expect(getChance({ depth: 0.8 })).toBeLessThan(getChance({}));
    expect(getChance({ characteristic: "cloud" })).toBeLessThan(getChance({}));
    expect(getChance({ view: "pavilion" })).toBeLessThan(getChance({}));
  });
});
