/** The whole state of an editor, and the steps that lead from one to the next. */
import { type Camera, WHOLE_VIEW } from "@/lib/editor/camera";
import { applyChange, type DocumentChange, isEmptyChange } from "@/lib/editor/document-change";
import type { DrawnMark, MarkDraft, MarkSubject } from "@/lib/editor/drawn-mark";
import { createHistory, type EditHistory, recordChange } from "@/lib/editor/edit-history";
import type { Gesture } from "@/lib/editor/gesture";
import { createDocument, type PlotDocument } from "@/lib/editor/plot-document";
import type { StoneFrame } from "@/lib/editor/stone-frame";
import type { Point, View } from "@/lib/gem/point";

export const TOOLS = ["select", "dot", "stroke", "outline", "pan"] as const;
export type Tool = (typeof TOOLS)[number];

/** A place in a view. */
export interface ViewPoint {
  readonly view: View;
  readonly at: Point;
}

/** Why something was not done, in words for the screen. A new object each time, so that it can be said again. */
export interface Notice {
  readonly about: "outside" | "crosses" | "flat" | "no-subject" | "full" | "hint";
  readonly text: string;
}

export interface EditorState<M extends DrawnMark> {
  readonly document: PlotDocument<M>;
  readonly history: EditHistory<M>;
  readonly tool: Tool;
  /** What the next mark will be; null until something is chosen. */
  readonly subject: MarkSubject | null;
  /** Subjects last used, latest first. */
  readonly recent: readonly MarkSubject[];
  readonly selectedId: string | null;
  readonly selectedVertex: number | null;
  readonly gesture: Gesture | null;
  readonly notice: Notice | null;
  readonly cameras: Readonly<Record<View, Camera>>;
  /** Where the pointer is, or null when it is over neither view. */
  readonly pointer: ViewPoint | null;
  /** The place that the arrow keys move, in each view. */
  readonly crosshairs: Readonly<Record<View, Point>>;
  /** The mark pointed at, on the diagram or in the table. */
  readonly highlightedId: string | null;
}

/** What the editor needs from outside. Nothing here draws, waits or remembers. */
export interface EditorEnvironment<M extends DrawnMark> {
  readonly frame: StoneFrame;
  readonly createMark: (draft: MarkDraft) => M;
  readonly takeId: () => string;
  /** Milliseconds since the sitting opened. */
  readonly nowMs: () => number;
  readonly readOnly: boolean;
}

/** A new state, and what happened to the document on the way, one change for each undo entry or step of undo. */
export interface EditorStep<M extends DrawnMark> {
  readonly state: EditorState<M>;
  readonly changes: readonly DocumentChange<M>[];
}

/** The state of an editor that has just been opened on these marks. */
export function createEditorState<M extends DrawnMark>(
  marks: readonly M[],
  tool: Tool = "select",
  subject: MarkSubject | null = null,
): EditorState<M> {
  return {
    document: createDocument(marks),
    history: createHistory(),
    tool,
    subject,
    recent: subject === null ? [] : [subject],
    selectedId: null,
    selectedVertex: null,
    gesture: null,
    notice: null,
    cameras: { crown: WHOLE_VIEW, pavilion: WHOLE_VIEW },
    pointer: null,
    crosshairs: { crown: [0, 0], pavilion: [0, 0] },
    highlightedId: null,
  };
}

/** A step that leaves the document alone. */
export function keep<M extends DrawnMark>(state: EditorState<M>): EditorStep<M> {
  return { state, changes: [] };
}

/** A step that does nothing but say why. */
export function refuse<M extends DrawnMark>(
  state: EditorState<M>,
  about: Notice["about"],
  text: string,
): EditorStep<M> {
  return keep({ ...state, notice: { about, text } });
}

/** A step that changes the document, as one undo entry. The selection is dropped if its mark is gone. */
export function commit<M extends DrawnMark>(state: EditorState<M>, change: DocumentChange<M>): EditorStep<M> {
  if (isEmptyChange(change)) return keep(state);
  const document = applyChange(state.document, change);
  const history = recordChange(state.history, change);
  return { state: dropGoneIds({ ...state, document, history, notice: null }), changes: [change] };
}

/** The state without a selection or highlight of marks that are no longer there. */
export function dropGoneIds<M extends DrawnMark>(state: EditorState<M>): EditorState<M> {
  const has = (id: string | null) => id !== null && state.document.byId.has(id);
  const isSelected = has(state.selectedId);
  return {
    ...state,
    selectedId: isSelected ? state.selectedId : null,
    selectedVertex: isSelected ? state.selectedVertex : null,
    highlightedId: has(state.highlightedId) ? state.highlightedId : null,
  };
}
