import { describe, expect, it } from "vitest";
import { MAX_UNDO_ENTRIES } from "@/lib/editor/edit-history";
import { MAX_MARKS, PlottedMarkSchema } from "@/lib/plot/mark";
import { createDot, openEditor } from "@/tests/support/editor-harness";

const drawWave = (count = 40): [number, number][] =>
  Array.from({ length: count }, (_, i) => [-0.2 + i * 0.005, 0.05 * Math.sin(i / 6)]);

describe("dots", () => {
  it("are placed where the pointer is let go, stamped and selected (SPEC 3.1, 3.3)", () => {
    const editor = openEditor([], { tool: "dot" });
    editor.press([0.1, 0.1]);
    expect(editor.marks()).toHaveLength(0);
    editor.drag([0.12, 0.1]);
    editor.release();
    expect(editor.told).toHaveLength(1);
    expect(editor.marks()).toEqual([
      {
        id: "m1",
        view: "crown",
        characteristic: "crystal",
        shape: { kind: "dot", at: [0.12, 0.1] },
        atMs: 1000,
      },
    ]);
    expect(editor.state().selectedId).toBe("m1");
    expect(editor.state().history.done).toHaveLength(1);
  });

  it("are refused outside the girdle and counted as on it when near (SPEC 5.2)", () => {
    const editor = openEditor([], { tool: "dot" });
    editor.click([0.55, 0]);
    expect(editor.marks()).toHaveLength(0);
    expect(editor.state().notice?.about).toBe("outside");
    editor.click([0.512, 0]);
    expect(editor.marks()[0]?.shape).toMatchObject({ kind: "dot" });
    expect(editor.state().notice).toBeNull();
  });

  it("ask for a characteristic first, and stop at the most marks a plot holds", () => {
    const unready = openEditor([], { tool: "dot", hasSubject: false });
    unready.click([0, 0]);
    expect(unready.state().notice?.about).toBe("no-subject");
    const full = openEditor(
      Array.from({ length: MAX_MARKS }, (_, i) => createDot(`x${i}`, [0, 0])),
      { tool: "dot" },
    );
    full.click([0, 0]);
    expect(full.state().notice?.about).toBe("full");
    expect(full.told).toEqual([]);
  });
});

describe("strokes and outlines", () => {
  it("are drawn in one drag, thinned, as one entry (SPEC 3.1, 3.4, 4.1)", () => {
    const editor = openEditor([], { tool: "stroke" });
    const [first, ...rest] = drawWave();
    if (first === undefined) throw new Error("no wave");
    editor.press(first);
    editor.drag(...rest);
    editor.release();
    const [mark] = editor.marks();
    expect(mark?.shape.kind).toBe("stroke");
    const count = mark?.shape.kind === "stroke" ? mark.shape.points.length : 0;
    expect(count).toBeGreaterThan(4);
    expect(count).toBeLessThan(20);
    expect(editor.state().history.done).toHaveLength(1);
    expect(PlottedMarkSchema.safeParse(mark).success).toBe(true);
  });

  it("follow the girdle where the hand strays outside (SPEC 5.1, 5.3)", () => {
    const editor = openEditor([], { tool: "stroke" });
    editor.press([0.4, 0]);
    editor.drag([0.5, 0.1], [0.6, 0.2], [0.6, 0.3], [0.3, 0.3]);
    editor.release();
    const [mark] = editor.marks();
    if (mark?.shape.kind !== "stroke") throw new Error("no stroke");
    for (const [x, y] of mark.shape.points) expect(Math.hypot(x, y)).toBeLessThanOrEqual(0.5 + 1e-6);
  });

  it("are set corner by corner and ended on the last corner or on the first (SPEC 3.4)", () => {
    const editor = openEditor([], { tool: "stroke" });
    for (const at of [
      [0, 0],
      [0.1, 0],
      [0.1, 0.1],
      [0.1, 0.1],
    ] as const)
      editor.click(at);
    expect(editor.marks()[0]?.shape).toEqual({
      kind: "stroke",
      points: [
        [0, 0],
        [0.1, 0],
        [0.1, 0.1],
      ],
    });
    editor.dispatch({ kind: "choose-tool", tool: "outline" });
    for (const at of [
      [-0.1, 0],
      [-0.2, 0],
      [-0.2, 0.1],
      [-0.101, 0.001],
    ] as const)
      editor.click(at);
    expect(editor.marks()[1]?.shape).toEqual({
      kind: "outline",
      points: [
        [-0.1, 0],
        [-0.2, 0],
        [-0.2, 0.1],
      ],
    });
    expect(editor.told).toHaveLength(2);
  });

  it("keep their corners when a finish is refused, and take corners back one by one (SPEC 4.3)", () => {
    const editor = openEditor([], { tool: "outline" });
    for (const at of [
      [0, 0],
      [0.1, 0.1],
      [0.1, 0],
      [0, 0.1],
    ] as const)
      editor.click(at);
    editor.dispatch({ kind: "finish" });
    expect(editor.state().notice?.about).toBe("crosses");
    expect(editor.state().gesture).toMatchObject({ kind: "drawing", points: { length: 4 } });
    editor.dispatch({ kind: "take-back-point" });
    editor.dispatch({ kind: "finish" });
    expect(editor.marks()[0]?.shape).toMatchObject({ points: { length: 3 } });
  });

  it("are dropped by a second finger without trace, corners before it kept (SPEC 3.6)", () => {
    const editor = openEditor([], { tool: "outline" });
    editor.press([0, 0]);
    editor.drag([0.1, 0], [0.1, 0.1]);
    editor.dispatch({ kind: "interrupt" });
    expect(editor.state().gesture).toBeNull();
    editor.click([0, 0]);
    editor.click([0.1, 0]);
    editor.press([0.2, 0.2]);
    editor.dispatch({ kind: "interrupt" });
    expect(editor.state().gesture).toMatchObject({
      points: [
        [0, 0],
        [0.1, 0],
      ],
      pressed: null,
    });
    expect(editor.told).toEqual([]);
  });

  it("are finished in the view in which they were begun", () => {
    const editor = openEditor([], { tool: "stroke" });
    editor.click([0, 0]);
    editor.click([0.1, 0], "pavilion");
    expect(editor.state().notice?.text).toContain("crown");
    expect(editor.state().gesture).toMatchObject({ points: [[0, 0]] });
  });
});

describe("moving and reshaping", () => {
  it("moves by a drag as one entry; a twitch only selects (SPEC 3.1, 3.7)", () => {
    const editor = openEditor([createDot("a", [0.1, 0.1])]);
    editor.press([0.1, 0.1]);
    editor.drag([0.104, 0.1]);
    editor.release();
    expect(editor.state().selectedId).toBe("a");
    expect(editor.told).toEqual([]);
    editor.press([0.1, 0.1]);
    editor.drag([0.15, 0.1], [0.2, 0.1]);
    editor.release();
    expect(editor.told).toEqual([{ put: [createDot("a", [0.2, 0.1])], removed: [] }]);
  });

  it("reshapes by a vertex and stops where the outline would cross itself (SPEC 4.4)", () => {
    const editor = openEditor([], { tool: "outline" });
    for (const at of [
      [0, 0],
      [0.2, 0],
      [0.2, 0.2],
      [0, 0.2],
    ] as const)
      editor.click(at);
    editor.dispatch({ kind: "finish" });
    editor.dispatch({ kind: "choose-tool", tool: "select" });
    editor.press([0, 0]);
    editor.drag([0.05, 0.02], [0.4, 0.1]);
    expect(editor.state().notice?.about).toBe("crosses");
    editor.release();
    expect(editor.marks()[0]?.shape).toMatchObject({ points: { 0: [0.05, 0.02], length: 4 } });
    expect(editor.state().history.done).toHaveLength(2);
  });

  it("puts a vertex in by its edge, and takes it out", () => {
    const editor = openEditor([], { tool: "stroke" });
    for (const at of [
      [0, 0],
      [0.2, 0],
      [0.2, 0],
    ] as const)
      editor.click(at);
    editor.dispatch({ kind: "choose-tool", tool: "select" });
    editor.click([0.1, 0.001]);
    expect(editor.marks()[0]?.shape).toMatchObject({ points: { length: 3 } });
    expect(editor.state().selectedVertex).toBe(1);
    editor.dispatch({ kind: "delete-vertex", id: "m1", vertex: 1 });
    expect(editor.marks()[0]?.shape).toMatchObject({ points: { length: 2 } });
    editor.dispatch({ kind: "delete-vertex", id: "m1", vertex: 0 });
    expect(editor.state().notice?.about).toBe("hint");
  });

  it("moves to where one presses, without dragging (SPEC 3.8)", () => {
    const editor = openEditor([createDot("a", [0, 0])]);
    editor.dispatch({ kind: "aim", id: "a", vertex: null });
    editor.press([0.2, 0.1], "pavilion");
    expect(editor.state().gesture?.kind).toBe("aiming");
    editor.press([0.2, 0.1]);
    expect(editor.marks()).toEqual([createDot("a", [0.2, 0.1])]);
    expect(editor.state().gesture).toBeNull();
  });

  it("makes one entry of a run of arrow keys, before whatever comes next (SPEC 3.1, 3.11)", () => {
    const editor = openEditor([createDot("a", [0, 0])]);
    editor.dispatch({ kind: "select", id: "a" });
    for (let i = 0; i < 5; i += 1) editor.dispatch({ kind: "nudge", dx: 0.01, dy: 0 });
    expect(editor.told).toEqual([]);
    editor.dispatch({ kind: "remove", id: "a" });
    expect(editor.told).toEqual([
      { put: [createDot("a", [0.05, 0])], removed: [] },
      { put: [], removed: ["a"] },
    ]);
    editor.dispatch({ kind: "undo" });
    expect(editor.marks()).toEqual([createDot("a", [0.05, 0])]);
    editor.dispatch({ kind: "undo" });
    expect(editor.marks()).toEqual([createDot("a", [0, 0])]);
  });
});

describe("undo, escape, read-only", () => {
  it("walks along entries and tells of each step (SPEC 3.10)", () => {
    const editor = openEditor([], { tool: "dot" });
    editor.click([0, 0]);
    editor.click([0.1, 0]);
    editor.dispatch({ kind: "undo" });
    editor.dispatch({ kind: "redo" });
    editor.dispatch({ kind: "undo" });
    expect(editor.told.map(({ put, removed }) => [put.length, removed.length])).toEqual([
      [1, 0],
      [1, 0],
      [0, 1],
      [1, 0],
      [0, 1],
    ]);
    editor.click([0.2, 0]);
    editor.dispatch({ kind: "redo" });
    expect(editor.marks().map(({ id }) => id)).toEqual(["m1", "m3"]);
    editor.dispatch({ kind: "undo" });
    editor.dispatch({ kind: "undo" });
    editor.dispatch({ kind: "undo" });
    expect(editor.marks()).toEqual([]);
  });

  it("makes no entry of looking (SPEC 3.2)", () => {
    const editor = openEditor([createDot("a", [0, 0])]);
    editor.click([0, 0]);
    editor.dispatch({ kind: "hover", place: { view: "crown", at: [0, 0] }, reach: 0.1 });
    expect(editor.state().highlightedId).toBe("a");
    editor.dispatch({ kind: "zoom", view: "crown", factor: 4, anchor: [0.2, 0.2] });
    editor.dispatch({ kind: "pan", view: "crown", dx: 0.1, dy: 0 });
    editor.dispatch({ kind: "choose-tool", tool: "dot" });
    editor.dispatch({ kind: "choose-subject", subject: { kind: "characteristic", name: "feather" } });
    editor.dispatch({ kind: "move-crosshair", view: "crown", dx: 0.1, dy: 0 });
    expect(editor.told).toEqual([]);
    expect(editor.state().history.done).toEqual([]);
  });

  it("leaves off step by step (SPEC 3.5)", () => {
    const editor = openEditor([createDot("a", [0, 0])]);
    editor.dispatch({ kind: "select", id: "a" });
    editor.dispatch({ kind: "select-vertex", vertex: 0 });
    editor.dispatch({ kind: "nudge", dx: 0.1, dy: 0 });
    editor.dispatch({ kind: "cancel" });
    expect(editor.state()).toMatchObject({ gesture: null, selectedVertex: 0, selectedId: "a" });
    editor.dispatch({ kind: "cancel" });
    expect(editor.state()).toMatchObject({ selectedVertex: null, selectedId: "a" });
    editor.dispatch({ kind: "cancel" });
    expect(editor.state().selectedId).toBeNull();
    expect(editor.told).toEqual([]);
  });

  it("takes no edit when read-only, but selects (SPEC 3.9)", () => {
    const editor = openEditor([createDot("a", [0, 0])], { readOnly: true, tool: "dot" });
    editor.press([0, 0]);
    editor.drag([0.2, 0.2]);
    editor.release();
    expect(editor.state().selectedId).toBe("a");
    editor.dispatch({ kind: "remove", id: "a" });
    editor.dispatch({ kind: "nudge", dx: 0.1, dy: 0 });
    editor.dispatch({ kind: "place", view: "crown", shape: { kind: "dot", at: [0, 0] } });
    expect(editor.told).toEqual([]);
    expect(editor.marks()).toHaveLength(1);
  });

  it("forgets the oldest entries and not the newest", () => {
    const editor = openEditor([], { tool: "dot" });
    for (let i = 0; i < MAX_UNDO_ENTRIES + 3; i += 1) editor.click([0, 0]);
    expect(editor.state().history.done).toHaveLength(MAX_UNDO_ENTRIES);
    for (let i = 0; i < MAX_UNDO_ENTRIES + 3; i += 1) editor.dispatch({ kind: "undo" });
    expect(editor.marks().map(({ id }) => id)).toEqual(["m1", "m2", "m3"]);
  });
});
