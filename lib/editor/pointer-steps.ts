/** The pointer and the crosshair, by tool. */
import { dragToChange, finishChange, pressToAim, pressToSelect } from "@/lib/editor/change-gesture";
import { dragToDraw, pressToDraw, releaseToDraw } from "@/lib/editor/draw-gesture";
import type { DrawnMark } from "@/lib/editor/drawn-mark";
import type { EditorAction } from "@/lib/editor/editor-action";
import {
  type EditorEnvironment,
  type EditorState,
  type EditorStep,
  keep,
  type ViewPoint,
} from "@/lib/editor/editor-state";
import { findMarkAt } from "@/lib/editor/find-at-point";
import { listMarks } from "@/lib/editor/plot-document";

type Action<M extends DrawnMark, K extends EditorAction<M>["kind"]> = Extract<EditorAction<M>, { kind: K }>;

/** The pointer went down: what that begins depends on the tool. */
export function pressPointer<M extends DrawnMark>(
  state: EditorState<M>,
  environment: EditorEnvironment<M>,
  place: ViewPoint,
  reach: number,
): EditorStep<M> {
  const { tool, gesture } = state;
  if (gesture?.kind === "aiming") return pressToAim(state, environment, gesture, place);
  if (tool === "pan") return keep(state);
  if (tool === "select" || environment.readOnly) {
    return keep(pressToSelect(state, environment, place, reach));
  }
  return pressToDraw(state, environment, place, reach);
}

/** The pointer moved while down, through these points. */
export function dragPointer<M extends DrawnMark>(
  state: EditorState<M>,
  environment: EditorEnvironment<M>,
  { points, reach }: Action<M, "drag">,
): EditorState<M> {
  return points.reduce((now, at) => {
    const { gesture } = now;
    return gesture?.kind === "moving" || gesture?.kind === "reshaping"
      ? dragToChange(now, environment, gesture, at, reach)
      : dragToDraw(now, environment, at, reach);
  }, state);
}

/** The pointer went up. */
export function releasePointer<M extends DrawnMark>(
  state: EditorState<M>,
  environment: EditorEnvironment<M>,
  reach: number,
): EditorStep<M> {
  const { gesture } = state;
  return gesture?.kind === "moving" || gesture?.kind === "reshaping"
    ? finishChange({ ...state, notice: null }, gesture)
    : releaseToDraw(state, environment, reach);
}

/** The pointer moved while up; while a gesture runs it highlights nothing. */
export function hoverPointer<M extends DrawnMark>(
  state: EditorState<M>,
  { place, reach }: Action<M, "hover">,
): EditorState<M> {
  if (place === null || state.gesture !== null) return { ...state, pointer: place };
  const under = findMarkAt(listMarks(state.document), place.view, place.at, reach);
  return { ...state, pointer: place, highlightedId: under?.id ?? null };
}

/** Enter on a view: what a press and release of the pointer at the crosshair would do. */
export function pressCrosshair<M extends DrawnMark>(
  state: EditorState<M>,
  environment: EditorEnvironment<M>,
  { view, reach }: Action<M, "press-crosshair">,
): EditorStep<M> {
  const pressed = pressPointer(state, environment, { view, at: state.crosshairs[view] }, reach);
  if (pressed.state.gesture === null || pressed.changes.length > 0) return pressed;
  if (pressed.state.gesture.kind === "aiming") return pressed;
  return releasePointer(pressed.state, environment, reach);
}
