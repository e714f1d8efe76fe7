import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { findServerReach } from "./find-server-reach.mjs";
import { LIB_WALLS } from "./walls.mjs";

const ROOT = resolve(import.meta.dirname, "../..");
const CRUISER = join(ROOT, "node_modules/dependency-cruiser/bin/dependency-cruise.mjs");

interface Cruise {
  modules: { source: string; dependencies: { resolved: string }[] }[];
  summary: { violations: { from: string; rule: { name: string } }[] };
}

function cruise(folder: string): Cruise {
  const args = [
    CRUISER,
    "--config",
    join(ROOT, ".dependency-cruiser.mjs"),
    "--output-type",
    "json",
    "app",
    "components",
    "lib",
  ];
  try {
    return JSON.parse(
      execFileSync(process.execPath, args, {
        cwd: folder,
        maxBuffer: 1e9,
        stdio: ["ignore", "pipe", "ignore"],
      }).toString(),
    );
  } catch (thrown) {
    // The cruiser's exit status counts violations; what it printed is still the report.
    return JSON.parse((thrown as { stdout: Buffer }).stdout.toString());
  }
}

/** A project of the same shape in which each planted file breaks one wall. */
const PLANTED: [rule: string, file: string, text: string][] = [
  ["lib-base", "lib/base/alias.ts", 'import { a } from "@/lib/gem/a"; export const b = a;'],
  ["lib-gem", "lib/gem/deep.ts", 'import { p } from "../../lib/plot/p"; export const q = p;'],
  [
    "lib-plot",
    "lib/plot/type-only.ts",
    'import type { S } from "@/lib/scoring/score-plot"; export type T = S;',
  ],
  ["lib-scoring", "lib/scoring/dynamic.ts", 'export const load = () => import("@/lib/agreement/kappa");'],
  [
    "lib-editor",
    "lib/editor/scores.ts",
    'import type { S } from "@/lib/scoring/score-plot"; export type T = S;',
  ],
  ["lib-access", "lib/access/data.ts", 'import { d } from "@/lib/data/d"; export const e = d;'],
  ["lib-data", "lib/data/up.ts", 'export { w } from "@/lib/workflows/w";'],
  ["lib-workflows", "lib/workflows/editor.ts", 'import type { E } from "@/lib/editor/e"; export type F = E;'],
  ["lib-has-no-loose-files", "lib/utils/loose.ts", 'import { a } from "@/lib/gem/a"; export const b = a;'],
  [
    "scoring-has-one-door",
    "lib/cli/side-door.ts",
    'import { i } from "@/lib/scoring/inside"; export const j = i;',
  ],
  ["components-stay-pure", "components/leak.tsx", 'import { d } from "@/lib/data/d"; export const e = d;'],
  ["no-circular", "lib/gem/ring-a.ts", 'import { b } from "./ring-b"; export const a = () => b;'],
];
const GROUND: [string, string][] = [
  ["lib/gem/a.ts", "export const a = 1;"],
  ["lib/gem/ring-b.ts", 'import { a } from "./ring-a"; export const b = () => a;'],
  ["lib/plot/p.ts", "export const p = 1;"],
  ["lib/scoring/score-plot.ts", "export interface S { s: number }"],
  ["lib/scoring/inside.ts", "export const i = 1;"],
  ["lib/agreement/kappa.ts", "export const k = 1;"],
  ["lib/editor/e.ts", "export interface E { e: number }"],
  ["lib/data/d.ts", "export const d = 1;"],
  ["lib/workflows/w.ts", "export const w = 1;"],
  ["app/client.tsx", '"use client";\nimport { m } from "./middle"; export const c = m;'],
  ["app/middle.ts", 'import { d } from "@/lib/data/d"; export const m = d;'],
  [
    "app/act.ts",
    '"use server";\nimport { d } from "@/lib/data/d"; export async function act() { return d; }',
  ],
  ["app/form.tsx", '"use client";\nimport { act } from "./act"; export const f = act;'],
];

const planted = mkdtempSync(join(tmpdir(), "loupework-walls-"));
for (const [file, text] of [
  ...GROUND,
  ...PLANTED.map(([, file, text]) => [file, text] as [string, string]),
]) {
  mkdirSync(dirname(join(planted, file)), { recursive: true });
  writeFileSync(join(planted, file), text);
}
writeFileSync(
  join(planted, "tsconfig.json"),
  JSON.stringify({
    compilerOptions: {
      module: "esnext",
      moduleResolution: "bundler",
      jsx: "react-jsx",
      paths: { "@/*": ["./*"] },
    },
  }),
);
symlinkSync(join(ROOT, "node_modules"), join(planted, "node_modules"));
afterAll(async () => {
  const { rmSync } = await import("node:fs");
  rmSync(planted, { recursive: true, force: true });
});

describe("the walls", () => {
  const report = cruise(planted);

  it.each(PLANTED)("%s catches %s", (rule, file) => {
    const caught = report.summary.violations
      .filter(({ from }) => from === file)
      .map(({ rule: { name } }) => name);
    expect(caught).toContain(rule);
  });

  it("follows a client file to the server's folders at any distance, but not through a server action", () => {
    expect(findServerReach(planted, report.modules)).toEqual([
      "app/client.tsx -> app/middle.ts -> lib/data/d.ts",
    ]);
  });

  it("stands between the project's own client files and the server's folders", () => {
    expect(findServerReach(ROOT, cruise(ROOT).modules)).toEqual([]);
  });

  it("names in its table only folders that it knows", () => {
    for (const allowed of Object.values(LIB_WALLS)) {
      for (const folder of allowed) expect(Object.keys(LIB_WALLS)).toContain(folder);
    }
  });
});
