/**
 * What the keyboard can ask of a view that has the focus: records of name, label, keys, effect and undo policy.
 * The shortcuts panel is this list, so it cannot tell of a key that does not work.
 */
import { getPxPerWidth, type Viewport, WHOLE_VIEW } from "@/lib/editor/camera";
import type { EditorMark } from "@/lib/editor/drawn-mark";
import type { EditorAction } from "@/lib/editor/editor-action";
import type { EditorState, Tool } from "@/lib/editor/editor-state";
import { findMark, listMarks } from "@/lib/editor/plot-document";
import type { View } from "@/lib/gem/point";
import { type PlottedMark, PROOFS, type Proof } from "@/lib/plot/mark";
import { listVertices } from "@/lib/plot/shape";

export type EditorMode = "bench" | "reference" | "debrief";

/** What a command acts on. */
export interface CommandContext {
  readonly state: EditorState<EditorMark>;
  readonly view: View;
  readonly viewport: Viewport;
  readonly mode: EditorMode;
}

/** How a command stands to undo: it makes an entry, walks along the entries, or leaves them alone. */
export type UndoPolicy = "makes-entry" | "walks-entries" | "leaves-alone";

export interface EditorCommand {
  readonly name: string;
  readonly label: string;
  readonly group: "Draw" | "Marks" | "Points" | "View";
  /** Keys as `KeyboardEvent.key`, lower case, with `mod+`, `shift+`, `alt+` before them in this order. */
  readonly keys: readonly string[];
  readonly undo: UndoPolicy;
  /** True for the arrow keys, which go on with a run of moves. */
  readonly isNudge?: true;
  /** In which modes it is there; in all when not given. */
  readonly modes?: readonly EditorMode[];
  /** The actions to take; none where there is nothing to act on. */
  readonly effect: (context: CommandContext) => readonly EditorAction<EditorMark>[];
}

const EDITING: readonly EditorMode[] = ["bench", "reference"];
/** The arrow keys move by this many pixels of the screen, so that they are finer the closer one looks. */
const STEP_PX = 4;
const LONG_STEP_PX = 24;
/** How far off the crosshair a mark may be and still be meant, px. */
const REACH_PX = 12;
const ZOOM_STEP = 1.5;

function chooseTool(tool: Tool, label: string, key: string, modes?: readonly EditorMode[]): EditorCommand {
  return {
    name: `tool-${tool}`,
    label,
    group: "Draw",
    keys: [key],
    undo: "leaves-alone",
    ...(modes === undefined ? {} : { modes }),
    effect: () => [{ kind: "choose-tool", tool }],
  };
}

/** Arrow keys: the selected mark or vertex with the select tool, else the crosshair. */
function moveBy(name: string, label: string, keys: readonly string[], px: number): EditorCommand {
  const ways: Record<string, readonly [number, number]> = {
    arrowleft: [-1, 0],
    arrowright: [1, 0],
    arrowup: [0, 1],
    arrowdown: [0, -1],
  };
  const [key = ""] = keys;
  const [wayX, wayY] = ways[key.replace("shift+", "")] ?? [0, 0];
  return {
    name,
    label,
    group: "Draw",
    keys,
    undo: "makes-entry",
    isNudge: true,
    effect: ({ state, view, viewport, mode }) => {
      const step = px / getPxPerWidth(state.cameras[view], viewport);
      const [dx, dy] = [wayX * step, wayY * step];
      const selected = findMark(state.document, state.selectedId);
      const isMark = mode !== "debrief" && state.tool === "select" && selected?.view === view;
      return [isMark ? { kind: "nudge", dx, dy } : { kind: "move-crosshair", view, dx, dy }];
    },
  };
}

const ARROWS = ["left", "right", "up", "down"] as const;

function selectBeside(state: EditorState<EditorMark>, way: 1 | -1): readonly EditorAction<EditorMark>[] {
  const marks = listMarks(state.document);
  if (marks.length === 0) return [];
  const at = marks.findIndex((mark) => mark.id === state.selectedId);
  const next = at < 0 ? (way === 1 ? 0 : marks.length - 1) : (at + way + marks.length) % marks.length;
  return [
    { kind: "choose-tool", tool: "select" },
    { kind: "select", id: marks[next]?.id ?? null },
  ];
}

function selectVertexBeside(
  state: EditorState<EditorMark>,
  way: 1 | -1,
): readonly EditorAction<EditorMark>[] {
  const mark = findMark(state.document, state.selectedId);
  if (mark === null || mark.shape.kind === "dot") return [];
  const count = listVertices(mark.shape).length;
  const { selectedVertex } = state;
  const vertex =
    selectedVertex === null ? (way === 1 ? 0 : count - 1) : (selectedVertex + way + count) % count;
  return [
    { kind: "choose-tool", tool: "select" },
    { kind: "select-vertex", vertex },
  ];
}

function findPlotted({ state, mode }: CommandContext): PlottedMark | null {
  const mark = findMark(state.document, state.selectedId);
  return mode === "bench" && mark !== null && "characteristic" in mark ? (mark as PlottedMark) : null;
}

/** The mark with the proof given or taken back; no empty list is kept. */
export function toggleProof(mark: PlottedMark, proof: Proof): PlottedMark {
  const { proofs = [], ...rest } = mark;
  const next = PROOFS.filter((one) => (one === proof ? !proofs.includes(one) : proofs.includes(one)));
  return next.length === 0 ? rest : { ...rest, proofs: next };
}

const PROOF_KEYS: Readonly<Record<Proof, string>> = { wiped: "w", tilted: "t", regripped: "g" };

const PROOF_COMMANDS = PROOFS.map(
  (proof): EditorCommand => ({
    name: `proof-${proof}`,
    label: `Selected mark: ${proof}, yes or no`,
    group: "Marks",
    keys: [PROOF_KEYS[proof]],
    undo: "makes-entry",
    modes: ["bench"],
    effect: (context) => {
      const mark = findPlotted(context);
      return mark === null ? [] : [{ kind: "replace", mark: toggleProof(mark, proof) }];
    },
  }),
);

const CONFIDENCE_COMMANDS = [1, 2, 3, 4, 5].map(
  (confidence): EditorCommand => ({
    name: `confidence-${confidence}`,
    label: `Selected mark: confidence ${confidence}`,
    group: "Marks",
    keys: [String(confidence)],
    undo: "makes-entry",
    modes: ["bench"],
    effect: (context) => {
      const mark = findPlotted(context);
      return mark === null ? [] : [{ kind: "replace", mark: { ...mark, confidence } }];
    },
  }),
);

function deleteSelected({ state }: CommandContext): readonly EditorAction<EditorMark>[] {
  const { gesture, selectedId: id, selectedVertex: vertex } = state;
  if (gesture?.kind === "drawing") return [{ kind: "take-back-point" }];
  if (id === null) return [];
  return vertex === null ? [{ kind: "remove", id }] : [{ kind: "delete-vertex", id, vertex }];
}

function zoomBy(factor: number) {
  return ({ state, view }: CommandContext): readonly EditorAction<EditorMark>[] => [
    {
      kind: "zoom",
      view,
      factor,
      anchor: state.pointer?.view === view ? state.pointer.at : state.cameras[view].centre,
    },
  ];
}

function panBy(wayX: number, wayY: number) {
  return ({ state, view, viewport }: CommandContext): readonly EditorAction<EditorMark>[] => {
    const step = viewport.halfWidth / state.cameras[view].zoom / 2;
    return [{ kind: "pan", view, dx: wayX * step, dy: wayY * step }];
  };
}

/** All commands, in the order of the shortcuts panel. */
export const EDITOR_COMMANDS: readonly EditorCommand[] = [
  chooseTool("select", "Select and move", "v"),
  chooseTool("dot", "Dot", "d", EDITING),
  chooseTool("stroke", "Stroke", "s", EDITING),
  chooseTool("outline", "Outline", "o", EDITING),
  chooseTool("pan", "Pan", "h"),
  ...ARROWS.map((way) => moveBy(`move-${way}`, `Move ${way}, finely`, [`arrow${way}`], STEP_PX)),
  ...ARROWS.map((way) => moveBy(`leap-${way}`, `Move ${way}, farther`, [`shift+arrow${way}`], LONG_STEP_PX)),
  {
    name: "press",
    label: "Place, set a corner, or select at the crosshair; twice in one place ends a stroke",
    group: "Draw",
    keys: ["enter"],
    undo: "makes-entry",
    effect: ({ state, view, viewport }) => {
      const reach = REACH_PX / getPxPerWidth(state.cameras[view], viewport);
      return [{ kind: "press-crosshair", view, reach }];
    },
  },
  {
    name: "finish",
    label: "Finish the stroke or outline",
    group: "Draw",
    keys: ["shift+enter", "f"],
    undo: "makes-entry",
    modes: EDITING,
    effect: () => [{ kind: "finish" }],
  },
  {
    name: "cancel",
    label: "Leave off, step by step: drawing, point, selection",
    group: "Draw",
    keys: ["escape"],
    undo: "leaves-alone",
    effect: () => [{ kind: "cancel" }],
  },
  {
    name: "undo",
    label: "Undo",
    group: "Marks",
    keys: ["mod+z"],
    undo: "walks-entries",
    modes: EDITING,
    effect: () => [{ kind: "undo" }],
  },
  {
    name: "redo",
    label: "Redo",
    group: "Marks",
    keys: ["mod+shift+z", "mod+y"],
    undo: "walks-entries",
    modes: EDITING,
    effect: () => [{ kind: "redo" }],
  },
  {
    name: "delete",
    label: "Delete the selected mark or point; while drawing, the last corner",
    group: "Marks",
    keys: ["delete", "backspace"],
    undo: "makes-entry",
    modes: EDITING,
    effect: deleteSelected,
  },
  {
    name: "next-mark",
    label: "Next mark",
    group: "Marks",
    keys: ["]", "n"],
    undo: "leaves-alone",
    effect: ({ state }) => selectBeside(state, 1),
  },
  {
    name: "previous-mark",
    label: "Previous mark",
    group: "Marks",
    keys: ["[", "p"],
    undo: "leaves-alone",
    effect: ({ state }) => selectBeside(state, -1),
  },
  ...CONFIDENCE_COMMANDS,
  ...PROOF_COMMANDS,
  {
    name: "next-point",
    label: "Next point of the selected mark",
    group: "Points",
    keys: ["."],
    undo: "leaves-alone",
    modes: EDITING,
    effect: ({ state }) => selectVertexBeside(state, 1),
  },
  {
    name: "previous-point",
    label: "Previous point of the selected mark",
    group: "Points",
    keys: [","],
    undo: "leaves-alone",
    modes: EDITING,
    effect: ({ state }) => selectVertexBeside(state, -1),
  },
  {
    name: "insert-point",
    label: "Put a point in after the selected one",
    group: "Points",
    keys: ["insert", "i"],
    undo: "makes-entry",
    modes: EDITING,
    effect: ({ state: { selectedId: id, selectedVertex } }) =>
      id === null ? [] : [{ kind: "insert-vertex", id, edge: selectedVertex ?? 0 }],
  },
  {
    name: "zoom-in",
    label: "Zoom in",
    group: "View",
    keys: ["+", "="],
    undo: "leaves-alone",
    effect: zoomBy(ZOOM_STEP),
  },
  {
    name: "zoom-out",
    label: "Zoom out",
    group: "View",
    keys: ["-"],
    undo: "leaves-alone",
    effect: zoomBy(1 / ZOOM_STEP),
  },
  {
    name: "zoom-whole",
    label: "Whole view",
    group: "View",
    keys: ["0"],
    undo: "leaves-alone",
    effect: ({ view }) => [{ kind: "set-camera", view, camera: WHOLE_VIEW }],
  },
  {
    name: "pan-left",
    label: "Look left",
    group: "View",
    keys: ["alt+arrowleft"],
    undo: "leaves-alone",
    effect: panBy(-1, 0),
  },
  {
    name: "pan-right",
    label: "Look right",
    group: "View",
    keys: ["alt+arrowright"],
    undo: "leaves-alone",
    effect: panBy(1, 0),
  },
  {
    name: "pan-up",
    label: "Look up",
    group: "View",
    keys: ["alt+arrowup"],
    undo: "leaves-alone",
    effect: panBy(0, 1),
  },
  {
    name: "pan-down",
    label: "Look down",
    group: "View",
    keys: ["alt+arrowdown"],
    undo: "leaves-alone",
    effect: panBy(0, -1),
  },
];

/** A key press as a keyboard event tells it. */
export interface KeyPress {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
}

/** The name of a key press as commands list it: `mod+shift+z`. Shift is part of a printed sign, not named with it. */
export function toKeyName({ key, ctrlKey, metaKey, shiftKey, altKey }: KeyPress): string {
  const lower = key.toLowerCase();
  const isSign = lower.length === 1 && !/[a-z]/.test(lower);
  const mod = ctrlKey || metaKey ? "mod+" : "";
  return `${mod}${shiftKey && !isSign ? "shift+" : ""}${altKey ? "alt+" : ""}${lower}`;
}

/** The command for a key press in a mode, or null. */
export function findCommand(press: KeyPress, mode: EditorMode): EditorCommand | null {
  const name = toKeyName(press);
  return (
    EDITOR_COMMANDS.find(({ keys, modes }) => keys.includes(name) && (modes?.includes(mode) ?? true)) ?? null
  );
}
