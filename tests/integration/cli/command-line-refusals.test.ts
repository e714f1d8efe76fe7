import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { runCommandLine } from "@/lib/cli/run-command-line";
import { makeSampleSet } from "@/tests/support/sample-set";
import { spawnCli } from "@/tests/support/spawn-cli";
import { standUpFolder } from "@/tests/support/stand-up-folder";

const { folder, put } = standUpFolder();
const FIRST_LOOK = "exercise-sets/first-look.json";
const PLOTS = "tests/golden/cases/cli/first-look.plots.json";

describe("a refusal", () => {
  const sample = makeSampleSet();
  const broken = makeSampleSet();
  const crossed = {
    kind: "outline",
    points: [
      [0, 0],
      [0.1, 0.1],
      [0.1, 0],
      [0, 0.1],
    ],
  };
  Object.assign(broken.stones[0] as object, {
    colour: "H",
    marks: [
      { id: "a", view: "crown", characteristic: "crystal", shape: crossed },
      { id: "a", view: "crown", characteristic: "crystal", shape: { kind: "dot", at: [0, 99] } },
    ],
  });
  const outside = makeSampleSet();
  Object.assign(outside.stones[0] as object, {
    marks: [
      {
        id: "a",
        view: "crown",
        characteristic: "crystal",
        shape: {
          kind: "stroke",
          points: [
            [0, 0],
            [0.4, 0.4],
          ],
        },
      },
      { id: "a", view: "side", characteristic: "sparkle", shape: { kind: "dot", at: [0, 0] } },
    ],
  });
  const twice = makeSampleSet();
  twice.stones.push({ ...twice.stones[0] });
  const good = put("good.json", JSON.stringify(sample));
  const strange = put(
    "strange.json",
    '{"format":"loupework/plots","version":1,"plots":[{"stone":"X","by":"s","grades":{"clarity":"IF"},"marks":[]}]}',
  );

  it.each([
    ["no command", [], /No command is named/],
    ["an unknown command", ["grade"], /grade: .*score, facets, echoes/],
    ["an unknown option", ["score", "--set", good, "--plots", PLOTS, "--fast", "1"], /--fast: is no option/],
    ["a missing option", ["score", "--set", good], /--plots: is missing/],
    ["an option without a value", ["score", "--plots", PLOTS, "--set"], /--set: needs a value/],
    ["a repeated option", ["score", "--set", good, "--set", good, "--plots", PLOTS], /--set: is given twice/],
    ["a stray word", ["score", "all", "--set", good, "--plots", PLOTS], /all: is no option/],
    [
      "a file that is not there",
      ["score", "--set", join(folder, "gone.json"), "--plots", PLOTS],
      /gone\.json: there is no such file/,
    ],
    ["a folder", ["score", "--set", folder, "--plots", PLOTS], /is a folder/],
    [
      "a file that is not text",
      ["score", "--set", put("latin.json", new Uint8Array([0x22, 0xe9, 0x22])), "--plots", PLOTS],
      /is not UTF-8/,
    ],
    [
      "a file that is not JSON",
      [
        "score",
        "--set",
        put("cut.json", '{\n  "format": "loupework/exercise-set",\n  "version" 1\n}'),
        "--plots",
        PLOTS,
      ],
      /line 3, column 13: a colon/,
    ],
    ["a set that is none", ["score", "--set", put("list.json", "[]"), "--plots", PLOTS], /was refused/],
    ["plots for a set", ["score", "--set", PLOTS, "--plots", PLOTS], /format: /],
    [
      "an unknown key",
      ["score", "--set", put("broken.json", JSON.stringify(broken)), "--plots", PLOTS],
      /stones\[0\]\.colour: unknown key/,
    ],
    [
      "a self-crossing outline",
      ["score", "--set", put("broken.json", JSON.stringify(broken)), "--plots", PLOTS],
      /stones\[0\]\.marks\[0\]\.shape\.points\[0\]: .*crosses itself/,
    ],
    [
      "a number out of range",
      ["score", "--set", put("broken.json", JSON.stringify(broken)), "--plots", PLOTS],
      /stones\[0\]\.marks\[1\]\.shape\.at\[1\]: /,
    ],
    [
      "a repeated id",
      ["score", "--set", put("twice.json", JSON.stringify(twice)), "--plots", PLOTS],
      /stones\[1\]\.id: .*second time/,
    ],
    [
      "a stone that the set does not have",
      ["score", "--set", good, "--plots", strange],
      /strange\.json: .*\n {2}plots\[0\]\.stone: the set has no stone "X"/,
    ],
    ["an unknown cut", ["facets", "--cut", "hexagon"], /--cut: must be one of round-brilliant/],
    [
      "impossible proportions",
      ["facets", "--cut", "round-brilliant", "--proportions", '{"tablePct":99}'],
      /tablePct: /,
    ],
    [
      "an unknown proportion",
      ["facets", "--cut", "round-brilliant", "--proportions", '{"tabel":57}'],
      /tabel: unknown key/,
    ],
    [
      "proportions that are not JSON",
      ["facets", "--cut", "round-brilliant", "--proportions", "{tablePct:57}"],
      /line 1, column 2: a key/,
    ],
    [
      "an unknown stone",
      ["echoes", "--set", FIRST_LOOK, "--stone", "Z-9"],
      /--stone: the set has no stone "Z-9"/,
    ],
    [
      "an unknown scale",
      ["agreement", "--ratings", put("r.csv", "item,rater,grade\n"), "--scale", "sparkle"],
      /--scale: must be one of clarity/,
    ],
    [
      "a grade off the scale",
      ["agreement", "--ratings", put("r2.csv", "item,rater,grade\n1,a,IF\n"), "--scale", "clarity"],
      /row 2: "IF" is not on the scale/,
    ],
  ] as [string, string[], RegExp][])("of %s goes to standard error with status 2", async (_, args, words) => {
    const { status, stdout, stderr } = await runCommandLine(args);
    expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
    expect(stderr).toMatch(words);
    expect(stderr).not.toMatch(/\n {4}at /);
  });

  it("is told by the process's own status and streams", () => {
    const { status, stdout, stderr } = spawnCli(
      "score",
      "--set",
      join(folder, "gone.json"),
      "--plots",
      PLOTS,
    );
    expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
    expect(stderr).toMatch(/gone\.json: there is no such file/);
  });

  it("names every fault of a set, not the first alone", async () => {
    const path = put("outside.json", JSON.stringify(outside));
    const { stderr } = await runCommandLine(["score", "--set", path, "--plots", PLOTS]);
    expect(stderr).toMatch(/stones\[0\]\.marks\[1\]\.view/);
    const fixed = JSON.parse(JSON.stringify(outside).replace('"side"', '"crown"')) as unknown;
    const again = await runCommandLine([
      "score",
      "--set",
      put("outside.json", JSON.stringify(fixed)),
      "--plots",
      PLOTS,
    ]);
    expect(again.stderr).toMatch(/stones\[0\]\.marks\[0\]\.shape\.points\[1\]: lies outside the girdle/);
    expect(again.stderr).toMatch(/stones\[0\]\.marks\[1\]\.id: /);
    expect(again.stderr).toMatch(/stones\[0\]\.marks\[1\]\.characteristic: "sparkle"/);
  });
});
