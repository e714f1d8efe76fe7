/** Actions that change marks without the pointer: from the table, the keyboard and the history. */
import { commitShape } from "@/lib/editor/change-gesture";
import { checkOutline } from "@/lib/editor/close-outline";
import { applyChange, createRemoval, createUpdate } from "@/lib/editor/document-change";
import type { DrawnMark } from "@/lib/editor/drawn-mark";
import type { undoChange } from "@/lib/editor/edit-history";
import {
  commit,
  dropGoneIds,
  type EditorEnvironment,
  type EditorState,
  type EditorStep,
  keep,
  refuse,
} from "@/lib/editor/editor-state";
import { isShapeInside } from "@/lib/editor/keep-inside";
import { REFUSALS } from "@/lib/editor/place-mark";
import { findMark } from "@/lib/editor/plot-document";
import type { Shape } from "@/lib/plot/shape";

/** Puts a mark in the place of the one with its id. */
export function replaceMark<M extends DrawnMark>(state: EditorState<M>, mark: M): EditorStep<M> {
  const record = state.document.byId.get(mark.id);
  if (record === undefined || record.mark === mark) return keep(state);
  return commit(state, createUpdate(record, mark));
}

/** Gives a mark another shape; refuses one that crosses itself, encloses nothing or lies outside the girdle. */
export function reshapeMark<M extends DrawnMark>(
  state: EditorState<M>,
  environment: EditorEnvironment<M>,
  id: string,
  shape: Shape,
): EditorStep<M> {
  const mark = findMark(state.document, id);
  if (mark === null) return keep(state);
  if (!isShapeInside(environment.frame, mark.view, shape)) return refuse(state, "outside", REFUSALS.outside);
  if (shape.kind === "outline") {
    const checked = checkOutline(shape.points);
    if (!checked.ok) return refuse(state, checked.why, REFUSALS[checked.why]);
  }
  return commitShape(state, id, shape);
}

/** Takes a mark away. */
export function removeMark<M extends DrawnMark>(state: EditorState<M>, id: string): EditorStep<M> {
  const record = state.document.byId.get(id);
  return record === undefined ? keep(state) : commit({ ...state, gesture: null }, createRemoval([record]));
}

/** Puts a vertex in or takes one out; refuses what the shape cannot take. */
export function changeVertices<M extends DrawnMark>(
  state: EditorState<M>,
  id: string,
  change: (shape: Shape) => Shape | null,
  selectedVertex: number | null,
): EditorStep<M> {
  const mark = findMark(state.document, id);
  if (mark === null) return keep(state);
  const shape = change(mark.shape);
  if (shape === null)
    return refuse(state, "hint", "This shape cannot do without that point, or take one there.");
  return commitShape({ ...state, selectedVertex }, id, shape);
}

/** Takes a step of undo or redo; null when there is none. */
export function walkHistory<M extends DrawnMark>(
  state: EditorState<M>,
  step: ReturnType<typeof undoChange<M>>,
): EditorStep<M> {
  if (step === null) return keep({ ...state, gesture: null });
  const document = applyChange(state.document, step.change);
  const walked = {
    ...state,
    document,
    history: step.history,
    gesture: null,
    selectedVertex: null,
    notice: null,
  };
  return { state: dropGoneIds(walked), changes: [step.change] };
}
