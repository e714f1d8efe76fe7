/** Keys for marks and their points: undo, delete, next and previous, confidence, proofs. */
import type { EditorMark } from "@/lib/editor/drawn-mark";
import type { EditorAction } from "@/lib/editor/editor-action";
import {
  type CommandContext,
  EDITING_MODES,
  type EditorCommand,
  type MarkCommand,
  type MarkCommandContext,
} from "@/lib/editor/editor-command";
import type { EditorState } from "@/lib/editor/editor-state";
import { findMark, listMarks } from "@/lib/editor/plot-document";
import { toggleProof } from "@/lib/editor/toggle-proof";
import { type PlottedMark, PROOFS, type Proof } from "@/lib/plot/mark";
import { listVertices } from "@/lib/plot/shape";

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

function findPlotted({ state, mode }: MarkCommandContext): PlottedMark | null {
  const mark = findMark(state.document, state.selectedId);
  return mode === "bench" && mark !== null && "characteristic" in mark ? (mark as PlottedMark) : null;
}

/** The key of each proof. */
export const PROOF_KEYS: Readonly<Record<Proof, string>> = { wiped: "w", tilted: "t", regripped: "g" };

const PROOF_COMMANDS = PROOFS.map(
  (proof): MarkCommand => ({
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
  (confidence): MarkCommand => ({
    name: `confidence-${confidence}`,
    label: `Selected mark: confidence ${confidence}`,
    family: "Confidence of the selected mark",
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

/** What is known of the selected mark: one key each. */
export const KNOWLEDGE_COMMANDS: readonly MarkCommand[] = [...CONFIDENCE_COMMANDS, ...PROOF_COMMANDS];

function deleteSelected({ state }: CommandContext): readonly EditorAction<EditorMark>[] {
  const { gesture, selectedId: id, selectedVertex: vertex } = state;
  if (gesture?.kind === "drawing") return [{ kind: "take-back-point" }];
  if (id === null) return [];
  return vertex === null ? [{ kind: "remove", id }] : [{ kind: "delete-vertex", id, vertex }];
}

/** In the order of the shortcuts panel. */
export const MARK_COMMANDS: readonly EditorCommand[] = [
  {
    name: "undo",
    label: "Undo",
    group: "Marks",
    keys: ["mod+z"],
    undo: "walks-entries",
    modes: EDITING_MODES,
    effect: () => [{ kind: "undo" }],
  },
  {
    name: "redo",
    label: "Redo",
    group: "Marks",
    keys: ["mod+shift+z", "mod+y"],
    undo: "walks-entries",
    modes: EDITING_MODES,
    effect: () => [{ kind: "redo" }],
  },
  {
    name: "delete",
    label: "Delete the selected mark or point; while drawing, the last corner",
    group: "Marks",
    keys: ["delete", "backspace"],
    undo: "makes-entry",
    modes: EDITING_MODES,
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
  ...KNOWLEDGE_COMMANDS,
  {
    name: "next-point",
    label: "Next point of the selected mark",
    group: "Points",
    keys: ["."],
    undo: "leaves-alone",
    modes: EDITING_MODES,
    effect: ({ state }) => selectVertexBeside(state, 1),
  },
  {
    name: "previous-point",
    label: "Previous point of the selected mark",
    group: "Points",
    keys: [","],
    undo: "leaves-alone",
    modes: EDITING_MODES,
    effect: ({ state }) => selectVertexBeside(state, -1),
  },
  {
    name: "insert-point",
    label: "Put a point in after the selected one",
    group: "Points",
    keys: ["insert", "i"],
    undo: "makes-entry",
    modes: EDITING_MODES,
    effect: ({ state: { selectedId: id, selectedVertex } }) =>
      id === null ? [] : [{ kind: "insert-vertex", id, edge: selectedVertex ?? 0 }],
  },
];
