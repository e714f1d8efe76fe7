/** Actions that never touch the document: tools, selection, what is seen, leaving off. */
import { panCamera, revealPoint, zoomCamera } from "@/lib/editor/camera";
import { nudgeSelected } from "@/lib/editor/change-gesture";
import { takeBackPoint } from "@/lib/editor/draw-gesture";
import type { DrawnMark } from "@/lib/editor/drawn-mark";
import type { EditorAction } from "@/lib/editor/editor-action";
import type { EditorEnvironment, EditorState } from "@/lib/editor/editor-state";
import { findMark } from "@/lib/editor/plot-document";
import { listVertices } from "@/lib/plot/shape";

type Action<M extends DrawnMark, K extends EditorAction<M>["kind"]> = Extract<EditorAction<M>, { kind: K }>;

/** The state after an action that leaves the document alone; unchanged for any other. */
export function reduceView<M extends DrawnMark>(
  state: EditorState<M>,
  environment: EditorEnvironment<M>,
  action: EditorAction<M>,
): EditorState<M> {
  const { halfWidth } = environment.frame;
  switch (action.kind) {
    case "interrupt":
      return interrupt(state);
    case "choose-tool":
      return { ...state, tool: action.tool, gesture: null, selectedVertex: null, notice: null };
    case "choose-subject":
      return { ...state, subject: action.subject, notice: null };
    case "select":
      return select(state, environment, action.id);
    case "select-vertex":
      return { ...state, selectedVertex: action.vertex };
    case "highlight":
      return state.highlightedId === action.id ? state : { ...state, highlightedId: action.id };
    case "nudge":
      return nudgeSelected(state, environment, action.dx, action.dy);
    case "aim":
      return {
        ...state,
        selectedId: action.id,
        gesture: { kind: "aiming", id: action.id, vertex: action.vertex },
        notice: { about: "hint", text: "Press on the diagram where it goes. Escape leaves it where it is." },
      };
    case "take-back-point":
      return takeBackPoint(state);
    case "cancel":
      return cancel(state);
    case "set-camera":
      return { ...state, cameras: { ...state.cameras, [action.view]: action.camera } };
    case "zoom": {
      const camera = zoomCamera(state.cameras[action.view], action.factor, action.anchor, halfWidth);
      return { ...state, cameras: { ...state.cameras, [action.view]: camera } };
    }
    case "pan": {
      const camera = panCamera(state.cameras[action.view], action.dx, action.dy, halfWidth);
      return { ...state, cameras: { ...state.cameras, [action.view]: camera } };
    }
    case "move-crosshair":
      return moveCrosshair(state, halfWidth, action);
    case "dismiss-notice":
      return state.notice === null ? state : { ...state, notice: null };
    default:
      return state;
  }
}

function interrupt<M extends DrawnMark>(state: EditorState<M>): EditorState<M> {
  const { gesture } = state;
  if (gesture === null || gesture.kind === "aiming" || gesture.kind === "nudging") return state;
  if (gesture.kind === "drawing" && gesture.points.length > 0) {
    return { ...state, gesture: { ...gesture, pressed: null, freehand: null } };
  }
  return { ...state, gesture: null, notice: null };
}

/** Escape, step by step: first the gesture, then the vertex, then the selection. */
function cancel<M extends DrawnMark>(state: EditorState<M>): EditorState<M> {
  if (state.gesture !== null) return { ...state, gesture: null, notice: null };
  if (state.selectedVertex !== null) return { ...state, selectedVertex: null, notice: null };
  return { ...state, selectedId: null, notice: null };
}

function select<M extends DrawnMark>(
  state: EditorState<M>,
  environment: EditorEnvironment<M>,
  id: string | null,
): EditorState<M> {
  const mark = findMark(state.document, id);
  const selected = { ...state, selectedId: mark?.id ?? null, selectedVertex: null };
  const at = mark === null ? undefined : listVertices(mark.shape)[0];
  if (mark === null || at === undefined) return selected;
  const camera = revealPoint(state.cameras[mark.view], at, environment.frame.halfWidth);
  return { ...selected, cameras: { ...state.cameras, [mark.view]: camera } };
}

function moveCrosshair<M extends DrawnMark>(
  state: EditorState<M>,
  halfWidth: number,
  { view, dx, dy }: Action<M, "move-crosshair">,
): EditorState<M> {
  const [x, y] = state.crosshairs[view];
  const hold = (value: number) => Math.min(halfWidth, Math.max(-halfWidth, value));
  const at = [hold(x + dx), hold(y + dy)] as const;
  return {
    ...state,
    pointer: { view, at },
    crosshairs: { ...state.crosshairs, [view]: at },
    cameras: { ...state.cameras, [view]: revealPoint(state.cameras[view], at, halfWidth) },
  };
}
