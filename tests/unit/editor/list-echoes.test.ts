import { describe, expect, it } from "vitest";
import { createReferenceDrawing } from "@/lib/editor/create-mark";
import type { ReferenceDrawing } from "@/lib/editor/drawn-mark";
import type { EditorAction } from "@/lib/editor/editor-action";
import { createEditorState } from "@/lib/editor/editor-state";
import { createEditorStore } from "@/lib/editor/editor-store";
import { type EchoSource, listEchoes, listEchoSources } from "@/lib/editor/list-echoes";
import { listMarks } from "@/lib/editor/plot-document";
import { createStoneFrame } from "@/lib/editor/stone-frame";
import { createIdSupply } from "@/lib/editor/supply-ids";
import { traceEchoWay } from "@/lib/editor/trace-echo-way";
import { getSolid } from "@/lib/gem/build-solid";
import { placeInclusion } from "@/lib/gem/place-inclusion";
import { toCrownPoint } from "@/lib/gem/point";
import { toReference } from "@/lib/plot/stone";
import { prepareReference } from "@/lib/scoring/prepare-reference";
import { listExerciseSets } from "@/tests/support/list-exercise-sets";

const INDEX = 2.417;
const ROUND = getSolid("round-brilliant", {});
const SOURCE: EchoSource = {
  id: "a",
  view: "crown",
  shape: { kind: "dot", at: [0.08, 0.05] },
  depth: 0.6,
};

describe("predicted echoes", () => {
  it("are those that the engine explains strays by, for every stone of the exercise sets", () => {
    for (const { resolved } of listExerciseSets()) {
      resolved.set.stones.forEach((stone, index) => {
        const solid = resolved.solids[index];
        if (solid === undefined) throw new Error("a stone without a solid");
        const { characteristics } = resolved;
        const isInside = (name: string) => characteristics.get(name)?.class === "inside";
        const mine = listEchoSources(stone.marks, isInside).flatMap((source) =>
          listEchoes(solid, source, stone.refractiveIndex),
        );
        const engine = prepareReference({
          stoneId: stone.id,
          stone,
          reference: toReference(stone),
          characteristics,
        });
        const theirs = [...engine.echoes.crown, ...engine.echoes.pavilion];
        const toText = (echo: (typeof theirs)[number]) =>
          [echo.view, echo.facets.join("+"), echo.strength.toFixed(6), echo.at[0].toFixed(6)].join(" ");
        expect(mine.map((echo) => toText({ ...echo, reference: 0 })).sort()).toEqual(
          theirs.map(toText).sort(),
        );
      });
    }
  });

  it("need a depth and an inside mark, and a place within the girdle", () => {
    const base = { id: "a", view: "crown", characteristic: "crystal", shape: SOURCE.shape } as const;
    const marks = [
      { ...base, depth: 0.5 },
      { ...base, id: "b" },
      { ...base, id: "c", characteristic: "pit", depth: 0.2 },
    ];
    expect(listEchoSources(marks, (name) => name === "crystal").map(({ id }) => id)).toEqual(["a"]);
    expect(listEchoes(ROUND, { ...SOURCE, shape: { kind: "dot", at: [0.6, 0] } }, INDEX)).toEqual([]);
  });

  it("have keys of their own, and strengths from 0.1 to 1", () => {
    const echoes = listEchoes(ROUND, SOURCE, INDEX);
    expect(echoes.length).toBeGreaterThan(3);
    expect(new Set(echoes.map(({ key }) => key)).size).toBe(echoes.length);
    for (const { strength } of echoes) {
      expect(strength).toBeGreaterThanOrEqual(0.1);
      expect(strength).toBeLessThanOrEqual(1);
    }
  });
});

describe("the way of an echo", () => {
  it("begins where the echo is seen, has a corner for every reflection, and ends at the inclusion", () => {
    const [x, y] = placeInclusion(ROUND, "crown", [0.08, 0.05], 0.6, INDEX);
    for (const { view, at, way, bounces } of listEchoes(ROUND, SOURCE, INDEX)) {
      expect(way).toHaveLength(bounces + 2);
      expect(way[0]).toEqual([expect.closeTo(at[0], 9), expect.closeTo(at[1], 9)]);
      const [endX, endY] = toCrownPoint(view, way[bounces + 1] ?? [9, 9]);
      expect(Math.hypot(endX - x, endY - y)).toBeLessThan(1e-12);
    }
  });

  it("is none for facets that do not lead to the inclusion", () => {
    const inclusion = placeInclusion(ROUND, "crown", [0.08, 0.05], 0.6, INDEX);
    const image = { view: "crown", at: [0.2, 0.2], path: [0, 40] } as const;
    expect(traceEchoWay(ROUND, image, inclusion, INDEX)).toBeNull();
    expect(traceEchoWay(ROUND, { ...image, path: [] }, inclusion, INDEX)).toBeNull();
    expect(traceEchoWay(ROUND, { ...image, path: [9999] }, inclusion, INDEX)).toBeNull();
  });
});

describe("what the page around adds (SPEC 3.12)", () => {
  const open = (readOnly = false) => {
    const mark: ReferenceDrawing = { id: "a", view: "crown", characteristic: "crystal", shape: SOURCE.shape };
    const heard: unknown[] = [];
    const store = createEditorStore<ReferenceDrawing>(
      { ...createEditorState([mark]), selectedId: "a" },
      {
        frame: createStoneFrame(ROUND),
        createMark: createReferenceDrawing,
        takeId: createIdSupply(["a"], ""),
        nowMs: () => 0,
        readOnly,
      },
      (change) => heard.push(change),
    );
    return { store, heard, list: () => listMarks(store.getState().document) };
  };
  const ADD: EditorAction<ReferenceDrawing> = {
    kind: "add",
    view: "pavilion",
    shape: { kind: "dot", at: [0.1, -0.2] },
    subject: { kind: "decoy", cause: "echo" },
  };

  it("is one undo entry and leaves the selection and the chosen subject alone", () => {
    const { store, heard, list } = open();
    store.dispatch(ADD);
    expect(list()[1]).toMatchObject({
      view: "pavilion",
      cause: "echo",
      shape: { kind: "dot", at: [0.1, -0.2] },
    });
    expect(store.getState()).toMatchObject({ selectedId: "a", subject: null, recent: [] });
    expect(heard).toHaveLength(1);
    store.dispatch({ kind: "undo" });
    expect(list().map(({ id }) => id)).toEqual(["a"]);
    store.dispatch({ kind: "redo" });
    expect(list()).toHaveLength(2);
  });

  it("is refused outside the girdle and in a read-only editor", () => {
    const outside = open();
    outside.store.dispatch({ ...ADD, shape: { kind: "dot", at: [0.9, 0] } });
    expect(outside.list()).toHaveLength(1);
    expect(outside.store.getState().notice?.about).toBe("outside");
    const closed = open(true);
    closed.store.dispatch(ADD);
    expect(closed.list()).toHaveLength(1);
  });
});
