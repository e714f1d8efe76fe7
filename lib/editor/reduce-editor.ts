/** From one state of the editor to the next: the one door to everything that the editor does. Pure. */
import { panCamera, revealPoint, zoomCamera } from "@/lib/editor/camera";
import {
  commitShape,
  dragToChange,
  finishChange,
  nudgeSelected,
  pressToAim,
  pressToSelect,
} from "@/lib/editor/change-gesture";
import { checkOutline } from "@/lib/editor/close-outline";
import { applyChange, createRemoval, createUpdate } from "@/lib/editor/document-change";
import {
  dragToDraw,
  finishDrawing,
  pressToDraw,
  releaseToDraw,
  takeBackPoint,
} from "@/lib/editor/draw-gesture";
import type { DrawnMark } from "@/lib/editor/drawn-mark";
import { redoChange, undoChange } from "@/lib/editor/edit-history";
import { deleteVertex, insertVertex } from "@/lib/editor/edit-vertices";
import type { EditorAction } from "@/lib/editor/editor-action";
import {
  commit,
  dropGoneIds,
  type EditorEnvironment,
  type EditorState,
  type EditorStep,
  keep,
  refuse,
  type ViewPoint,
} from "@/lib/editor/editor-state";
import { findMarkAt } from "@/lib/editor/find-at-point";
import { isShapeInside } from "@/lib/editor/keep-inside";
import { placeShape, REFUSALS } from "@/lib/editor/place-mark";
import { findMark, listMarks } from "@/lib/editor/plot-document";
import { listVertices, type Shape } from "@/lib/plot/shape";

type Action<M extends DrawnMark, K extends EditorAction<M>["kind"]> = Extract<EditorAction<M>, { kind: K }>;

/** Actions that may come in the middle of a run of arrow keys without ending it. */
const PASSING = new Set([
  "nudge",
  "hover",
  "highlight",
  "zoom",
  "pan",
  "set-camera",
  "dismiss-notice",
  "cancel",
]);
/** Actions that a read-only editor does not take. */
const EDITING = new Set([
  "place",
  "replace",
  "reshape",
  "remove",
  "insert-vertex",
  "delete-vertex",
  "nudge",
  "undo",
  "redo",
  "aim",
  "finish",
]);

/**
 * The state after an action, and the changes made to the document on the way. Running arrow-key moves are settled
 * first, as an undo entry of their own. A read-only editor refuses silently whatever would edit.
 */
export function reduceEditor<M extends DrawnMark>(
  state: EditorState<M>,
  environment: EditorEnvironment<M>,
  action: EditorAction<M>,
): EditorStep<M> {
  if (environment.readOnly && EDITING.has(action.kind)) return keep(state);
  if (state.gesture?.kind === "nudging" && !PASSING.has(action.kind)) {
    const settled = finishChange(state, state.gesture);
    const step = reduceSettled(settled.state, environment, action);
    return { state: step.state, changes: [...settled.changes, ...step.changes] };
  }
  return reduceSettled(state, environment, action);
}

function reduceSettled<M extends DrawnMark>(
  state: EditorState<M>,
  environment: EditorEnvironment<M>,
  action: EditorAction<M>,
): EditorStep<M> {
  switch (action.kind) {
    case "press":
      return press(state, environment, action.place, action.reach);
    case "drag":
      return keep(drag(state, environment, action));
    case "release":
      return release(state, environment, action.reach);
    case "hover":
      return keep(hover(state, action));
    case "place":
      return placeShape(state, environment, action.view, action.shape);
    case "replace":
      return replace(state, action.mark);
    case "reshape":
      return reshape(state, environment, action.id, action.shape);
    case "remove":
      return remove(state, action.id);
    case "insert-vertex":
      return changeVertices(state, action.id, (shape) => insertVertex(shape, action.edge), action.edge + 1);
    case "delete-vertex":
      return changeVertices(state, action.id, (shape) => deleteVertex(shape, action.vertex), null);
    case "undo":
      return walkHistory(state, undoChange(state.history));
    case "redo":
      return walkHistory(state, redoChange(state.history));
    case "finish":
      return finishDrawing(state, environment);
    case "press-crosshair":
      return pressCrosshair(state, environment, action);
    default:
      return keep(reduceView(state, environment, action));
  }
}

/** Actions that never touch the document. */
function reduceView<M extends DrawnMark>(
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

function press<M extends DrawnMark>(
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

function drag<M extends DrawnMark>(
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

function release<M extends DrawnMark>(
  state: EditorState<M>,
  environment: EditorEnvironment<M>,
  reach: number,
): EditorStep<M> {
  const { gesture } = state;
  return gesture?.kind === "moving" || gesture?.kind === "reshaping"
    ? finishChange({ ...state, notice: null }, gesture)
    : releaseToDraw(state, environment, reach);
}

function hover<M extends DrawnMark>(
  state: EditorState<M>,
  { place, reach }: Action<M, "hover">,
): EditorState<M> {
  if (place === null || state.gesture !== null) return { ...state, pointer: place };
  const under = findMarkAt(listMarks(state.document), place.view, place.at, reach);
  return { ...state, pointer: place, highlightedId: under?.id ?? null };
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

function replace<M extends DrawnMark>(state: EditorState<M>, mark: M): EditorStep<M> {
  const record = state.document.byId.get(mark.id);
  if (record === undefined || record.mark === mark) return keep(state);
  return commit(state, createUpdate(record, mark));
}

function reshape<M extends DrawnMark>(
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

function remove<M extends DrawnMark>(state: EditorState<M>, id: string): EditorStep<M> {
  const record = state.document.byId.get(id);
  return record === undefined ? keep(state) : commit({ ...state, gesture: null }, createRemoval([record]));
}

function changeVertices<M extends DrawnMark>(
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

function walkHistory<M extends DrawnMark>(
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

/** Enter on a view: what a press and release of the pointer at the crosshair would do. */
function pressCrosshair<M extends DrawnMark>(
  state: EditorState<M>,
  environment: EditorEnvironment<M>,
  { view, reach }: Action<M, "press-crosshair">,
): EditorStep<M> {
  const pressed = press(state, environment, { view, at: state.crosshairs[view] }, reach);
  if (pressed.state.gesture === null || pressed.changes.length > 0) return pressed;
  if (pressed.state.gesture.kind === "aiming") return pressed;
  return release(pressed.state, environment, reach);
}
