import { describe, expect, it } from "vitest";
import {
  buildEchoLayer,
  linkWay,
  listEchoRows,
  toEchoDecoy,
  toFacetWords,
} from "@/components/echoes/build-echo-layer";
import type { EchoAnswer, EchoInput } from "@/components/echoes/echo-messages";
import { createEchoServer } from "@/components/echoes/serve-echoes";
import type { ReferenceDrawing } from "@/lib/editor/drawn-mark";
import { type EchoSource, listEchoes } from "@/lib/editor/list-echoes";
import { getSolid } from "@/lib/gem/build-solid";
import { DecoySchema } from "@/lib/plot/mark";

const INDEX = 2.417;
const SOLID = getSolid("round-brilliant", {});
const source = (id: string, x: number): EchoSource => ({
  id,
  view: "crown",
  shape: { kind: "dot", at: [x, 0.05] },
  depth: 0.6,
});
const mark = (id: string, x: number): ReferenceDrawing => ({ ...source(id, x), characteristic: "crystal" });
const DRAWINGS = [mark("a", 0.08), mark("b", -0.12)];
const ECHOES = [
  ...listEchoes(SOLID, source("a", 0.08), INDEX),
  ...listEchoes(SOLID, source("b", -0.12), INDEX),
];

describe("rows of echoes", () => {
  const rows = listEchoRows(ECHOES, DRAWINGS, SOLID);

  it("are all echoes, the strongest first, with the mark's number, the strength, the place and the facets", () => {
    expect(rows).toHaveLength(ECHOES.length);
    const strengths = rows.map(({ echo }) => echo.strength);
    expect(strengths).toEqual([...strengths].sort((a, b) => b - a));
    for (const { echo, words } of rows) {
      const number = echo.markId === "a" ? 1 : 2;
      expect(words).toContain(
        echo.bounces === 0 ? `mark ${number} a second time` : `echo of mark ${number}, `,
      );
      expect(words).toContain(`${Math.round(100 * echo.strength)}%`);
      for (const facet of echo.facets) expect(words).toContain(facet);
      expect(words).not.toMatch(/[a-z]-\d/);
    }
  });

  it("name the facets in the order of the line of sight", () => {
    expect(toFacetWords(["star 3", "pavilion main 5"])).toBe("through star 3 by pavilion main 5");
    expect(toFacetWords(["table", "pavilion main 1", "bezel 2"])).toBe(
      "through table by pavilion main 1, then bezel 2",
    );
    expect(toFacetWords(["star 3"])).toBe("through star 3, refracted and not reflected");
  });

  it("can be those of one mark, and leave out a mark that is no longer drawn", () => {
    expect(new Set(listEchoRows(ECHOES, DRAWINGS, SOLID, "b").map(({ echo }) => echo.markId))).toEqual(
      new Set(["b"]),
    );
    expect(listEchoRows(ECHOES, DRAWINGS.slice(0, 1), SOLID).every(({ echo }) => echo.markId === "a")).toBe(
      true,
    );
    expect(listEchoRows([], DRAWINGS, SOLID)).toEqual([]);
  });

  it("become decoys that the schema takes, which then stand for them on the diagram", () => {
    for (const row of rows) {
      const decoy = DecoySchema.parse({ id: "d", ...toEchoDecoy(row.echo) });
      const after = listEchoRows(ECHOES, [...DRAWINGS, decoy], SOLID);
      expect(after.find(({ echo }) => echo.key === row.echo.key)?.decoy).toEqual({ id: "d", number: 3 });
      const keys = buildEchoLayer(after).items.map(({ key }) => key);
      expect(keys).not.toContain(row.echo.key);
      expect(keys.length).toBe(after.filter(({ decoy: taken }) => taken === null).length);
    }
  });

  it("are drawn as predictions with their strength, without a number", () => {
    const layer = buildEchoLayer(rows);
    expect(layer.items.map(({ strength }) => strength)).toEqual(rows.map(({ echo }) => echo.strength));
    expect(layer.items.every(({ callout, style }) => callout === null && style === "decoy")).toBe(true);
  });

  it("have a way without gaps", () => {
    for (const { echo } of rows) {
      const links = linkWay(echo);
      expect(links).toHaveLength(echo.bounces + 1);
      links.slice(1).forEach(({ from }, index) => {
        expect(from).toEqual(links[index]?.to);
      });
    }
  });
});

describe("the server of echoes", () => {
  const input = (sources: readonly EchoSource[]): EchoInput => ({
    cut: "round-brilliant",
    proportions: {},
    refractiveIndex: INDEX,
    sources,
  });
  const open = () => {
    const answers: EchoAnswer[] = [];
    const serve = createEchoServer(
      (answer) => answers.push(answer),
      () => Promise.resolve(),
    );
    return { answers, serve };
  };

  it("answers with the echoes of all marks", async () => {
    const { answers, serve } = open();
    await serve({ kind: "predict", job: 7, input: input([source("a", 0.08), source("b", -0.12)]) });
    expect(answers).toEqual([{ job: 7, echoes: ECHOES }]);
  });

  it("drops what a newer request overtakes", async () => {
    const { answers, serve } = open();
    const old = serve({ kind: "predict", job: 1, input: input([source("a", 0.08), source("b", -0.12)]) });
    const next = serve({ kind: "predict", job: 2, input: input([source("a", 0.08)]) });
    await Promise.all([old, next]);
    expect(answers.map(({ job }) => job)).toEqual([2]);
  });

  it("drops what is cancelled", async () => {
    const { answers, serve } = open();
    const old = serve({ kind: "predict", job: 1, input: input([source("a", 0.08)]) });
    await Promise.all([old, serve({ kind: "cancel" })]);
    expect(answers).toEqual([]);
  });

  it("refuses numbers that make no stone", async () => {
    const { serve } = open();
    const impossible = { ...input([source("a", 0)]), proportions: { tablePct: 99 } };
    await expect(serve({ kind: "predict", job: 1, input: impossible })).rejects.toThrow();
  });
});
