/** From one state of the editor to the next: the one door to everything that the editor does. Pure. */
import { finishChange } from "@/lib/editor/change-gesture";
import { finishDrawing } from "@/lib/editor/draw-gesture";
import type { DrawnMark } from "@/lib/editor/drawn-mark";
import { redoChange, undoChange } from "@/lib/editor/edit-history";
import { changeVertices, removeMark, replaceMark, reshapeMark, walkHistory } from "@/lib/editor/edit-marks";
import { deleteVertex, insertVertex } from "@/lib/editor/edit-vertices";
import type { EditorAction } from "@/lib/editor/editor-action";
import { type EditorEnvironment, type EditorState, type EditorStep, keep } from "@/lib/editor/editor-state";
import { addShape, placeShape } from "@/lib/editor/place-mark";
import {
  dragPointer,
  hoverPointer,
  pressCrosshair,
  pressPointer,
  releasePointer,
} from "@/lib/editor/pointer-steps";
import { reduceView } from "@/lib/editor/reduce-view";

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
  "add",
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
      return pressPointer(state, environment, action.place, action.reach);
    case "drag":
      return keep(dragPointer(state, environment, action));
    case "release":
      return releasePointer(state, environment, action.reach);
    case "hover":
      return keep(hoverPointer(state, action));
    case "place":
      return placeShape(state, environment, action.view, action.shape);
    case "add":
      return addShape(state, environment, action);
    case "replace":
      return replaceMark(state, action.mark);
    case "reshape":
      return reshapeMark(state, environment, action.id, action.shape);
    case "remove":
      return removeMark(state, action.id);
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
