import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { runCommandLine } from "@/lib/cli/run-command-line";
import { readExerciseSet } from "@/lib/exchange/read-exercise-set";
import { type ScoreResult, ScoreResultSchema } from "@/lib/plot/score-result";
import { spawnCli } from "@/tests/support/spawn-cli";
import { standUpFolder } from "@/tests/support/stand-up-folder";

const { put } = standUpFolder();
const FIRST_LOOK = "exercise-sets/first-look.json";
const PLOTS = "tests/golden/cases/cli/first-look.plots.json";

describe("score", () => {
  const args = ["score", "--set", FIRST_LOOK, "--plots", PLOTS];

  it("prints JSON of the format that design.md names, in the order of the plots, and nothing else", async () => {
    const run = await runCommandLine(args);
    expect(run).toMatchObject({ status: 0, stderr: "" });
    const { results } = JSON.parse(run.stdout) as { results: unknown[] };
    const parsed = results.map((result) => ScoreResultSchema.parse(result));
    const { plots } = JSON.parse(readFileSync(PLOTS, "utf8")) as { plots: { stone: string; by: string }[] };
    expect(parsed.map(({ stone, by }) => [stone, by])).toEqual(plots.map(({ stone, by }) => [stone, by]));
    expect(Object.keys(results[0] as object)).toEqual([
      "stone",
      "by",
      "total",
      "alignment",
      "found",
      "overlooked",
      "strays",
      "lines",
      "suspectStone",
    ]);
    expect(run.stdout).not.toMatch(/NaN|-0[,\s\]}]/);
  });

  it("has every reference mark that is not optional either found or overlooked, once, and every mark used once", async () => {
    const { set } = readExerciseSet(readFileSync(FIRST_LOOK, "utf8"));
    const run = await runCommandLine(args);
    const { results } = JSON.parse(run.stdout) as { results: ScoreResult[] };
    for (const { stone, by, found, overlooked, strays, lines, total } of results) {
      const counted = set.stones.find(({ id }) => id === stone)?.marks.filter(({ optional }) => !optional);
      const said = [...found.map(({ reference }) => reference), ...overlooked];
      expect([by, stone, said.sort()]).toEqual([by, stone, counted?.map(({ id }) => id).sort()]);
      const strayIds = strays.map(({ mark }) => mark);
      expect(new Set(strayIds).size).toBe(strayIds.length);
      for (const { mark } of found) expect(strayIds).not.toContain(mark);
      const hundredths = lines.reduce((sum, { points }) => sum + Math.round(points * 100), 0);
      expect(hundredths).toBe(Math.round(total * 100));
    }
  });

  it("as a process of its own prints the same bytes", async () => {
    expect(spawnCli(...args)).toEqual(await runCommandLine(args));
  });

  it("takes a file of no plots", async () => {
    const none = put("none.json", '{"format":"loupework/plots","version":1,"plots":[]}');
    expect(await runCommandLine(["score", "--set", FIRST_LOOK, "--plots", none])).toEqual({
      status: 0,
      stdout: '{ "results": [] }\n',
      stderr: "",
    });
  });
});

describe("facets", () => {
  it("prints the round brilliant that Tolkowsky's proportions give (check-values 2.1, 2.2)", async () => {
    const proportions = '{"tablePct":53,"crownAngleDeg":34.5,"pavilionAngleDeg":40.75,"girdlePct":2}';
    const { status, stdout } = await runCommandLine([
      "facets",
      "--cut",
      "round-brilliant",
      "--proportions",
      proportions,
    ]);
    expect(status).toBe(0);
    const { vertices, facets } = JSON.parse(stdout) as {
      vertices: [number, number, number][];
      facets: { name: string; kind: string; vertices: number[] }[];
    };
    const counts = new Map<string, number>();
    for (const { kind } of facets) counts.set(kind, (counts.get(kind) ?? 0) + 1);
    expect(Object.fromEntries(counts)).toMatchObject({
      table: 1,
      star: 8,
      bezel: 8,
      "upper-girdle": 16,
      "lower-girdle": 16,
      "pavilion-main": 8,
    });
    const heights = vertices.map(([, , z]) => z);
    // Crown 16.1511 % and pavilion 43.0828 % of the girdle width, and the girdle between.
    expect(Math.max(...heights)).toBeCloseTo(0.161511 + 0.01, 5);
    expect(Math.min(...heights)).toBeCloseTo(-0.430828 - 0.01, 5);
    const edges = facets.reduce((sum, facet) => sum + facet.vertices.length, 0) / 2;
    expect(vertices.length - edges + facets.length).toBe(2);
  });
});

describe("agreement", () => {
  it("prints every statistic, for a table small enough to check by hand", async () => {
    // Three of four items alike; chance 0.5 * 0.75 + 0.5 * 0.25 = 0.5; kappa (0.75 - 0.5) / (1 - 0.5).
    const rows = ["item,rater,grade", "1,a,1", "1,b,1", "2,a,1", "2,b,1", "3,a,2", "3,b,2", "4,a,2", "4,b,1"];
    const ratings = put("two.csv", `${rows.join("\n")}\n`);
    const { status, stdout } = await runCommandLine(["agreement", "--ratings", ratings, "--scale", "1,2"]);
    expect(status).toBe(0);
    const printed = JSON.parse(stdout) as Record<string, { value: number }> & {
      kappa: { unweighted: { value: number } };
    };
    expect(printed.exact?.value).toBe(0.75);
    expect(printed.bias?.value).toBe(-0.25);
    expect(printed.kappa.unweighted.value).toBeCloseTo(0.5, 12);
    expect(Object.keys(printed)).toEqual([
      "items",
      "raters",
      "ratings",
      "exact",
      "withinOne",
      "bias",
      "kappa",
      "fleiss",
      "alpha",
      "ac1",
      "icc",
    ]);
  });
});

describe("echoes", () => {
  it("prints the images of each inside mark that has a depth, sorted by view, bounces and falling strength", async () => {
    const { status, stdout } = await runCommandLine(["echoes", "--set", FIRST_LOOK, "--stone", "A-04"]);
    expect(status).toBe(0);
    const { marks } = JSON.parse(stdout) as {
      marks: { id: string; images: { view: string; at: number[]; bounces: number; strength: number }[] }[];
    };
    expect(marks.map(({ id }) => id)).toEqual([
      "dark-crystal",
      "crystal-2",
      "needle",
      "feather",
      "cloud",
      "indented",
    ]);
    for (const { images } of marks) {
      const keys = images.map(
        ({ view, bounces, strength }) => [view === "crown" ? 0 : 1, bounces, -strength] as const,
      );
      const sorted = [...keys].sort((a, b) => a[0] - b[0] || a[1] - b[1] || a[2] - b[2]);
      expect(keys).toEqual(sorted);
      for (const { bounces, strength } of images) {
        expect(bounces).toBeLessThanOrEqual(3);
        expect(strength).toBeGreaterThanOrEqual(0.1);
      }
    }
  });
});
