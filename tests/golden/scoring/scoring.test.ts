/** The engine's kept answers. `npx tsx tests/golden/regenerate.ts` writes them anew; review the difference. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { CAUSES } from "@/lib/plot/mark";
import { listGoldenCases, scoreCase } from "@/tests/support/scoring/golden-cases";

const SPEC = fileURLToPath(new URL("../../../lib/scoring/SPEC.md", import.meta.url));
const cases = listGoldenCases();

describe("the engine's kept cases", () => {
  it.each(cases.map((golden) => [golden.name, golden] as const))("%s is scored as before", (_, golden) => {
    expect(scoreCase(golden)).toEqual(golden.expected);
  });

  it("hold a stray of every cause", () => {
    const seen = cases.flatMap(({ expected }) =>
      expected.flatMap(({ result }) => result.strays.map(({ cause }) => cause)),
    );
    expect(new Set(seen)).toEqual(new Set(CAUSES));
  });

  it("cite rules that the specification has", () => {
    const known = new Set([...readFileSync(SPEC, "utf8").matchAll(/^- (\d\.\d)/gm)].map((match) => match[1]));
    expect(cases.flatMap(({ rules }) => rules.filter((rule) => !known.has(rule)))).toEqual([]);
  });
});
