import { describe, expect, it } from "vitest";
import { createPlottedMark } from "@/lib/editor/create-mark";
import type { EditorMark } from "@/lib/editor/drawn-mark";
import { type EditorMode, toKeyName } from "@/lib/editor/editor-command";
import { EDITOR_COMMANDS, findCommand } from "@/lib/editor/editor-commands";
import { createEditorState } from "@/lib/editor/editor-state";
import { createEditorStore } from "@/lib/editor/editor-store";
import { listMarks } from "@/lib/editor/plot-document";
import { runCommand } from "@/lib/editor/run-command";
import { createIdSupply } from "@/lib/editor/supply-ids";
import { createDot, ROUND_FRAME } from "@/tests/support/editor-harness";

const MODES: readonly EditorMode[] = ["bench", "reference", "debrief"];
const VIEWPORT = { sizePx: 500, halfWidth: ROUND_FRAME.halfWidth };
const NO_KEYS = { ctrlKey: false, metaKey: false, shiftKey: false, altKey: false };

/** A bench that is worked by key names alone. */
function openBench(marks: readonly EditorMark[] = []) {
  let changes = 0;
  const store = createEditorStore<EditorMark>(
    createEditorState(marks, "dot", { kind: "characteristic", name: "feather" }),
    {
      frame: ROUND_FRAME,
      createMark: createPlottedMark,
      takeId: createIdSupply(
        marks.map(({ id }) => id),
        "",
      ),
      nowMs: () => 0,
      readOnly: false,
    },
    () => {
      changes += 1;
    },
  );
  const press = (...names: string[]) => {
    for (const name of names) {
      const command = EDITOR_COMMANDS.find(
        ({ keys, modes }) => keys.includes(name) && (modes?.includes("bench") ?? true),
      );
      if (command === undefined) throw new Error(`no command for ${name}`);
      runCommand(store, command, { view: "crown", viewport: VIEWPORT, mode: "bench" });
    }
  };
  return { store, press, marks: () => listMarks(store.getState().document), countChanges: () => changes };
}

describe("the commands", () => {
  it("have names of their own, and no two of a mode share a key (SPEC 7.1)", () => {
    const names = EDITOR_COMMANDS.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const mode of MODES) {
      const keys = EDITOR_COMMANDS.filter(({ modes }) => modes?.includes(mode) ?? true).flatMap(
        ({ keys }) => keys,
      );
      expect(new Set(keys).size, mode).toBe(keys.length);
      expect(keys.length).toBeGreaterThan(10);
    }
  });

  it("name key presses as keyboards tell them", () => {
    expect(toKeyName({ ...NO_KEYS, key: "Z", ctrlKey: true, shiftKey: true })).toBe("mod+shift+z");
    expect(toKeyName({ ...NO_KEYS, key: "z", metaKey: true })).toBe("mod+z");
    expect(toKeyName({ ...NO_KEYS, key: "+", shiftKey: true })).toBe("+");
    expect(toKeyName({ ...NO_KEYS, key: "ArrowLeft", altKey: true })).toBe("alt+arrowleft");
    expect(findCommand({ ...NO_KEYS, key: "d" }, "bench")?.name).toBe("tool-dot");
    expect(findCommand({ ...NO_KEYS, key: "d" }, "debrief")).toBeNull();
    expect(findCommand({ ...NO_KEYS, key: "q" }, "bench")).toBeNull();
  });

  it("do to undo what their policy says (SPEC 7.2)", () => {
    for (const command of EDITOR_COMMANDS) {
      const bench = openBench([createDot("a", [0, 0]), createDot("b", [0.1, 0])]);
      bench.press("v", "]");
      const before = bench.store.getState().history;
      for (const action of command.effect({
        state: bench.store.getState(),
        view: "crown",
        viewport: VIEWPORT,
        mode: "bench",
      })) {
        bench.store.dispatch(action);
      }
      bench.store.dispatch({ kind: "settle" });
      const { done } = bench.store.getState().history;
      if (command.undo !== "makes-entry") expect(done, command.name).toEqual(before.done);
      else expect(done.length - before.done.length, command.name).toBeLessThanOrEqual(1);
    }
    const bench = openBench([createDot("a", [0, 0])]);
    bench.press("v", "]", "arrowright", "delete");
    expect(bench.store.getState().history.done).toHaveLength(2);
  });

  it("place, move, reshape and remove marks without a pointer (SPEC 7.3)", () => {
    const bench = openBench();
    bench.press("shift+arrowright", "arrowup", "enter");
    expect(bench.marks()).toHaveLength(1);
    bench.press("o", "enter", "shift+arrowdown", "enter", "shift+arrowright", "enter", "shift+enter");
    const outline = bench.marks()[1];
    expect(outline?.shape).toMatchObject({ kind: "outline", points: { length: 3 } });
    bench.press("v", ".", "arrowleft", "i", "delete");
    bench.press("arrowright", "arrowright", "5", "w", "g");
    expect(bench.marks()[1]).toMatchObject({ confidence: 5, proofs: ["wiped", "regripped"] });
    expect(bench.marks()[1]?.shape).not.toEqual(outline?.shape);
    bench.press("w");
    expect(bench.marks()[1]).toMatchObject({ proofs: ["regripped"] });
    bench.press("delete", "[", "delete");
    expect(bench.marks()).toEqual([]);
    for (let i = 0; i < 20; i += 1) bench.press("mod+z");
    expect(bench.marks()).toEqual([]);
    for (let i = 0; i < 2; i += 1) bench.press("mod+y");
    expect(bench.marks()).toHaveLength(2);
  });

  it("see the marks as a run of arrow keys leaves them (SPEC 3.11)", () => {
    const bench = openBench([createDot("a", [0, 0])]);
    bench.press("v", "]", "shift+arrowright", "shift+arrowright", "3");
    const [mark] = bench.marks();
    expect(mark).toMatchObject({ confidence: 3 });
    expect(mark?.shape.kind === "dot" ? mark.shape.at[0] : 0).toBeGreaterThan(0.05);
    expect(bench.countChanges()).toBe(2);
  });

  it("select at the crosshair, and end a stroke by pressing twice in one place", () => {
    const bench = openBench([createDot("a", [0, 0])]);
    bench.press("v", "enter");
    expect(bench.store.getState().selectedId).toBe("a");
    bench.press("escape", "s", "enter", "shift+arrowup", "enter", "enter");
    expect(bench.marks()[1]?.shape).toMatchObject({ kind: "stroke", points: { length: 2 } });
  });
});
