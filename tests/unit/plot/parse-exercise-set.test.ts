import { describe, expect, it } from "vitest";
import { AppError } from "@/lib/base/app-error";
import { parseExerciseSet } from "@/lib/plot/parse-exercise-set";
import { parsePlots } from "@/lib/plot/parse-plots";
import { makeSamplePlots, makeSampleSet, type SampleSet } from "@/tests/support/sample-set";

function faultsOf(work: () => unknown): { path: string; message: string }[] {
  try {
    work();
  } catch (thrown) {
    if (thrown instanceof AppError) return [...thrown.faults];
    throw thrown;
  }
  throw new Error("was not refused");
}

const firstStone = (set: SampleSet) =>
  set.stones[0] as { [key: string]: unknown; marks: Record<string, unknown>[] };

describe("parseExerciseSet", () => {
  it("accepts the sample and fills in what it leaves to defaults", () => {
    const { set, rubric, scales, solids } = parseExerciseSet(makeSampleSet());
    expect(set.stones[0]?.refractiveIndex).toBe(2.417);
    expect(set.stones[0]?.decoys).toEqual([]);
    expect(rubric.near).toBe(0.03);
    expect(scales.clarity[0]).toBe("Loupe-clean");
    expect(solids).toHaveLength(1);
  });

  it("overrides the rubric key by key, also inside its tables", () => {
    const { rubric } = parseExerciseSet({ ...makeSampleSet(), rubric: { deductions: { dust: 6 } } });
    expect(rubric.deductions.dust).toBe(6);
    expect(rubric.deductions.echo).toBe(3);
  });

  const refusals: [string, (set: SampleSet) => void, string][] = [
    [
      "an unknown key",
      (set) => Object.assign(firstStone(set).marks[0] ?? {}, { colour: "red" }),
      "stones[0].marks[0].colour",
    ],
    ["a repeated stone id", (set) => set.stones.push({ ...set.stones[0] }), "stones[1].id"],
    [
      "a repeated mark id",
      (set) => Object.assign(firstStone(set).marks[1] ?? {}, { id: "a" }),
      "stones[0].marks[1].id",
    ],
    [
      "a depth beyond the stone",
      (set) => Object.assign(firstStone(set).marks[0] ?? {}, { depth: 1.1 }),
      "stones[0].marks[0].depth",
    ],
    [
      "a grade off its scale",
      (set) => Object.assign(firstStone(set), { grades: { clarity: "SI3" } }),
      "stones[0].grades.clarity",
    ],
    [
      "no clarity",
      (set) => Object.assign(firstStone(set), { grades: { colour: "H" } }),
      "stones[0].grades.clarity",
    ],
    [
      "an unknown characteristic",
      (set) => Object.assign(firstStone(set).marks[1] ?? {}, { characteristic: "dust" }),
      "stones[0].marks[1].characteristic",
    ],
    [
      "a point outside the girdle",
      (set) =>
        Object.assign(firstStone(set).marks[2] ?? {}, {
          shape: {
            kind: "stroke",
            points: [
              [0.1, 0],
              [0.4, 0.4],
            ],
          },
        }),
      "stones[0].marks[2].shape.points[1]",
    ],
    [
      "a dot outside the girdle",
      (set) => Object.assign(firstStone(set).marks[1] ?? {}, { shape: { kind: "dot", at: [0.51, 0] } }),
      "stones[0].marks[1].shape.at",
    ],
    [
      "a self-crossing outline",
      (set) =>
        Object.assign(firstStone(set).marks[0] ?? {}, {
          shape: {
            kind: "outline",
            points: [
              [0, 0],
              [0.1, 0.1],
              [0.1, 0],
              [0, 0.1],
            ],
          },
        }),
      "stones[0].marks[0].shape.points[0]",
    ],
    [
      "a table that is no table",
      (set) => Object.assign(firstStone(set), { proportions: { tablePct: 140 } }),
      "stones[0].proportions.tablePct",
    ],
    [
      "shares that do not add up",
      (set) => Object.assign(set, { rubric: { shares: { plot: 80 } } }),
      "rubric.shares",
    ],
    ["another format", (set) => Object.assign(set, { format: "something/else" }), "format"],
    [
      "a number that is none",
      (set) => Object.assign(firstStone(set), { weightCt: Number.NaN }),
      "stones[0].weightCt",
    ],
  ];
  it.each(refusals)("refuses %s with the path to it", (_name, spoil, path) => {
    const set = makeSampleSet();
    spoil(set);
    expect(faultsOf(() => parseExerciseSet(set)).map((fault) => fault.path)).toContain(path);
  });

  it("lists every fault and not only the first", () => {
    const set = makeSampleSet();
    Object.assign(firstStone(set).marks[0] ?? {}, { id: "b" });
    Object.assign(firstStone(set), { grades: { clarity: "none" } });
    expect(faultsOf(() => parseExerciseSet(set))).toHaveLength(2);
  });

  it("knows the characteristics that a set adds, and refuses one that is there already", () => {
    const set = makeSampleSet();
    set.characteristics = [{ name: "silk", class: "inside", like: ["needle"] }];
    const { characteristics } = parseExerciseSet(set);
    expect(characteristics.get("silk")?.like).toEqual(["needle"]);
    expect(characteristics.get("needle")?.like).toContain("silk");
    set.characteristics = [{ name: "needle", class: "inside", like: ["nothing"] }];
    expect(faultsOf(() => parseExerciseSet(set)).map(({ path }) => path)).toEqual([
      "characteristics[0].name",
      "characteristics[0].like[0]",
    ]);
  });

  it.each([null, 3, "set", [], {}])("refuses %j without crashing", (input) => {
    expect(faultsOf(() => parseExerciseSet(input)).length).toBeGreaterThan(0);
  });
});

describe("parsePlots", () => {
  const resolved = () => parseExerciseSet(makeSampleSet());

  it("accepts a plot and a file without plots", () => {
    const mark = {
      id: "m1",
      view: "crown",
      characteristic: "crystal",
      shape: { kind: "dot", at: [0.11, 0.05] },
      atMs: 61250,
    };
    expect(parsePlots(makeSamplePlots([mark]), resolved()).plots).toHaveLength(1);
    expect(parsePlots({ format: "loupework/plots", version: 1, plots: [] }, resolved()).plots).toEqual([]);
  });

  it("refuses a stone that the set does not have", () => {
    const file = makeSamplePlots();
    Object.assign(file.plots[0] ?? {}, { stone: "S-9" });
    expect(faultsOf(() => parsePlots(file, resolved()))[0]?.path).toBe("plots[0].stone");
  });

  it("refuses a sixth confidence and a proof named twice", () => {
    const mark = {
      id: "m1",
      view: "crown",
      characteristic: "crystal",
      shape: { kind: "dot", at: [0.11, 0.05] },
      confidence: 6,
      proofs: ["wiped", "wiped"],
    };
    expect(faultsOf(() => parsePlots(makeSamplePlots([mark]), resolved())).map(({ path }) => path)).toEqual([
      "plots[0].marks[0].confidence",
      "plots[0].marks[0].proofs",
    ]);
  });
});
