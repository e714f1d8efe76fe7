/** Moving and reshaping what is already drawn: by dragging, by pressing where it goes, by the arrow keys (SPEC.md 3). */
import { createUpdate } from "@/lib/editor/document-change";
import type { DrawnMark } from "@/lib/editor/drawn-mark";
import { insertVertex, moveVertex } from "@/lib/editor/edit-vertices";
import {
  commit,
  type EditorEnvironment,
  type EditorState,
  type EditorStep,
  keep,
  refuse,
  type ViewPoint,
} from "@/lib/editor/editor-state";
import { findHandleAt, findMarkAt } from "@/lib/editor/find-at-point";
import type { Aiming, Changing } from "@/lib/editor/gesture";
import { clampInside, getOvershoot, moveShapeInside } from "@/lib/editor/keep-inside";
import { getDistance, getMiddle } from "@/lib/editor/measure-shape";
import { REFUSALS } from "@/lib/editor/place-mark";
import { findMark, listMarks } from "@/lib/editor/plot-document";
import type { Point } from "@/lib/gem/point";
import { listVertices, type Shape } from "@/lib/plot/shape";

/** Replaces the shape of a mark as one undo entry. */
export function commitShape<M extends DrawnMark>(
  state: EditorState<M>,
  id: string,
  shape: Shape,
): EditorStep<M> {
  const record = state.document.byId.get(id);
  if (record === undefined || record.mark.shape === shape) return keep(state);
  return commit(state, createUpdate(record, { ...record.mark, shape }));
}

/** A press on a handle of the selected mark: takes hold of the vertex, or puts one in on an edge and holds that. */
function pressHandle<M extends DrawnMark>(
  state: EditorState<M>,
  { view, at }: ViewPoint,
  reach: number,
): EditorState<M> | null {
  const selected = findMark(state.document, state.selectedId);
  if (selected === null || selected.view !== view) return null;
  const handle = findHandleAt(selected.shape, at, reach);
  if (handle === null) return null;
  const isEdge = handle.kind === "edge";
  const shape = isEdge ? insertVertex(selected.shape, handle.index, handle.at) : selected.shape;
  if (shape === null) return null;
  const vertex = isEdge ? handle.index + 1 : handle.index;
  const { id, shape: before } = selected;
  return {
    ...state,
    notice: null,
    selectedVertex: vertex,
    gesture: { kind: "reshaping", id, view, vertex, from: at, before, shape, isUnderWay: isEdge },
  };
}

/** A press with the select tool: on a handle, on a mark, or on nothing, which drops the selection. */
export function pressToSelect<M extends DrawnMark>(
  state: EditorState<M>,
  environment: EditorEnvironment<M>,
  place: ViewPoint,
  reach: number,
): EditorState<M> {
  if (!environment.readOnly) {
    const held = pressHandle(state, place, reach);
    if (held !== null) return held;
  }
  const { view, at } = place;
  const mark = findMarkAt(listMarks(state.document), view, at, reach);
  if (mark === null) {
    return { ...state, notice: null, gesture: null, selectedId: null, selectedVertex: null };
  }
  const selected = { ...state, notice: null, selectedId: mark.id, selectedVertex: null };
  if (environment.readOnly) return { ...selected, gesture: null };
  const { id, shape } = mark;
  return {
    ...selected,
    gesture: { kind: "moving", id, view, vertex: null, from: at, before: shape, shape, isUnderWay: false },
  };
}

/** The shape with its vertex at `to`, or the whole moved by (dx, dy); unchanged where it would cross itself. */
function changeShape<M extends DrawnMark>(
  environment: EditorEnvironment<M>,
  gesture: Pick<Changing, "view" | "vertex">,
  shape: Shape,
  dx: number,
  dy: number,
): Shape {
  const { view, vertex } = gesture;
  if (vertex === null) return moveShapeInside(environment.frame, view, shape, dx, dy);
  const at = listVertices(shape)[vertex];
  if (at === undefined) return shape;
  const to = clampInside(environment.frame, view, [at[0] + dx, at[1] + dy]);
  return moveVertex(shape, vertex, to) ?? shape;
}

/** The pointer moved while it holds a mark or a vertex. The shape follows it as far as it may. */
export function dragToChange<M extends DrawnMark>(
  state: EditorState<M>,
  environment: EditorEnvironment<M>,
  gesture: Changing,
  at: Point,
  reach: number,
): EditorState<M> {
  if (!gesture.isUnderWay && getDistance(gesture.from, at) < reach / 2) return state;
  const { before, from, vertex, view } = gesture;
  if (vertex === null) {
    const shape = changeShape(environment, gesture, before, at[0] - from[0], at[1] - from[1]);
    return { ...state, gesture: { ...gesture, shape, isUnderWay: true } };
  }
  const to = clampInside(environment.frame, view, at);
  const shape = moveVertex(gesture.shape, vertex, to);
  const notice =
    shape === null && gesture.shape.kind === "outline"
      ? (state.notice ?? { about: "crosses" as const, text: REFUSALS.crosses })
      : null;
  return { ...state, notice, gesture: { ...gesture, shape: shape ?? gesture.shape, isUnderWay: true } };
}

/** Ends a move, a reshaping or a run of arrow keys as one undo entry. */
export function finishChange<M extends DrawnMark>(state: EditorState<M>, gesture: Changing): EditorStep<M> {
  const rested = { ...state, gesture: null };
  return gesture.isUnderWay ? commitShape(rested, gesture.id, gesture.shape) : keep(rested);
}

/** The arrow keys move the selected mark, or its selected vertex, by (dx, dy). A run of them is one gesture. */
export function nudgeSelected<M extends DrawnMark>(
  state: EditorState<M>,
  environment: EditorEnvironment<M>,
  dx: number,
  dy: number,
): EditorState<M> {
  const mark = findMark(state.document, state.selectedId);
  if (mark === null || environment.readOnly) return state;
  const running = state.gesture?.kind === "nudging" ? state.gesture : null;
  const gesture: Changing = running ?? {
    kind: "nudging",
    id: mark.id,
    view: mark.view,
    vertex: state.selectedVertex,
    from: [0, 0],
    before: mark.shape,
    shape: mark.shape,
    isUnderWay: true,
  };
  const shape = changeShape(environment, gesture, gesture.shape, dx, dy);
  return { ...state, gesture: { ...gesture, shape } };
}

/** A press that says where the mark or the vertex goes. */
export function pressToAim<M extends DrawnMark>(
  state: EditorState<M>,
  environment: EditorEnvironment<M>,
  gesture: Aiming,
  { view, at }: ViewPoint,
): EditorStep<M> {
  const mark = findMark(state.document, gesture.id);
  if (mark === null) return keep({ ...state, gesture: null });
  if (mark.view !== view) return refuse(state, "hint", `This mark is in the ${mark.view} view.`);
  if (getOvershoot(environment.frame, view, at) > 0.02) return refuse(state, "outside", REFUSALS.outside);
  const from = gesture.vertex === null ? getMiddle(mark.shape) : listVertices(mark.shape)[gesture.vertex];
  if (from === undefined) return keep({ ...state, gesture: null });
  const shape = changeShape(
    environment,
    { view, vertex: gesture.vertex },
    mark.shape,
    at[0] - from[0],
    at[1] - from[1],
  );
  return commitShape({ ...state, gesture: null }, mark.id, shape);
}
