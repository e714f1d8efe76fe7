/** Drawing with the pointer or the crosshair: dots, strokes and outlines (SPEC.md 3). */
import type { DrawnMark } from "@/lib/editor/drawn-mark";
import { toShape } from "@/lib/editor/drawn-mark";
import {
  type EditorEnvironment,
  type EditorState,
  type EditorStep,
  keep,
  refuse,
  type ViewPoint,
} from "@/lib/editor/editor-state";
import type { Drawing } from "@/lib/editor/gesture";
import { clampInside, getOvershoot } from "@/lib/editor/keep-inside";
import { getDistance, getLineLength } from "@/lib/editor/measure-shape";
import { placeFreehand, placeShape, REFUSALS } from "@/lib/editor/place-mark";
import type { Point } from "@/lib/gem/point";
import { MAX_SHAPE_POINTS } from "@/lib/plot/shape";

/** This far outside the girdle still counts as on it: features at the girdle are drawn from both sides. */
const RIM_REACH = 0.02;
/** The thinning may move the line by this share of the pointer's reach: under a pixel. */
const THIN_SHARE = 0.08;
/** A drag's next point is no nearer to the last than this share of the reach: a third of a pixel. */
const LEAST_STEP = 0.04;

/** A press with the dot, stroke or outline tool. */
export function pressToDraw<M extends DrawnMark>(
  state: EditorState<M>,
  environment: EditorEnvironment<M>,
  { view, at }: ViewPoint,
  reach: number,
): EditorStep<M> {
  const { tool, gesture } = state;
  if (state.subject === null) return refuse(state, "no-subject", REFUSALS.noSubject);
  if (getOvershoot(environment.frame, view, at) > Math.max(RIM_REACH, reach)) {
    return refuse(state, "outside", REFUSALS.outside);
  }
  const held = clampInside(environment.frame, view, at);
  if (gesture?.kind === "drawing") {
    if (gesture.view !== view) {
      return refuse(state, "hint", `Finish the ${gesture.shape} in the ${gesture.view} view first.`);
    }
    return keep({ ...state, notice: null, gesture: { ...gesture, pressed: held } });
  }
  if (tool === "stroke" || tool === "outline") {
    const drawing: Drawing = {
      kind: "drawing",
      shape: tool,
      view,
      points: [],
      pressed: held,
      freehand: null,
    };
    return keep({ ...state, notice: null, selectedId: null, selectedVertex: null, gesture: drawing });
  }
  return keep({ ...state, notice: null, gesture: { kind: "placing-dot", view, at: held } });
}

/** The pointer moved while down. */
export function dragToDraw<M extends DrawnMark>(
  state: EditorState<M>,
  environment: EditorEnvironment<M>,
  at: ViewPoint["at"],
  reach: number,
): EditorState<M> {
  const { gesture } = state;
  if (gesture?.kind === "placing-dot") {
    return { ...state, gesture: { ...gesture, at: clampInside(environment.frame, gesture.view, at) } };
  }
  if (gesture?.kind !== "drawing" || gesture.pressed === null) return state;
  const held = clampInside(environment.frame, gesture.view, at);
  if (gesture.freehand !== null) {
    const last = gesture.freehand.at(-1) as Point;
    if (getDistance(last, held) < reach * LEAST_STEP) return state;
    return { ...state, gesture: { ...gesture, freehand: [...gesture.freehand, held] } };
  }
  if (gesture.points.length > 0) return { ...state, gesture: { ...gesture, pressed: held } };
  if (getDistance(gesture.pressed, held) < reach / 2) return state;
  return { ...state, gesture: { ...gesture, freehand: [gesture.pressed, held] } };
}

/** Places a drawing whose corners were set one by one; what cannot be placed stays open, with a notice. */
export function finishDrawing<M extends DrawnMark>(
  state: EditorState<M>,
  environment: EditorEnvironment<M>,
): EditorStep<M> {
  const { gesture } = state;
  if (gesture?.kind !== "drawing") return keep(state);
  const least = gesture.shape === "stroke" ? 2 : 3;
  if (gesture.points.length < least || getLineLength(gesture.points) === 0) {
    return refuse(state, "hint", `A ${gesture.shape} needs ${least} points or more.`);
  }
  const step = placeShape(
    { ...state, gesture: null },
    environment,
    gesture.view,
    toShape(gesture.shape, gesture.points),
  );
  return step.changes.length > 0
    ? step
    : keep({ ...state, notice: step.state.notice, gesture: { ...gesture, pressed: null } });
}

/** The pointer went up while a stroke or an outline was being drawn: the drag ends it, a click sets a corner. */
function releaseDrawing<M extends DrawnMark>(
  state: EditorState<M>,
  environment: EditorEnvironment<M>,
  gesture: Drawing,
  reach: number,
): EditorStep<M> {
  if (gesture.pressed === null) return keep(state);
  if (gesture.freehand !== null) {
    const { view, shape: kind, freehand: line } = gesture;
    const tolerance = reach * THIN_SHARE;
    return placeFreehand({ ...state, gesture: null }, environment, { view, kind, line, tolerance });
  }
  const { points, pressed } = gesture;
  const last = points.at(-1);
  const first = points[0];
  const isOnLast = last !== undefined && getDistance(last, pressed) <= reach / 2;
  const isOnFirst =
    gesture.shape === "outline" &&
    points.length >= 3 &&
    first !== undefined &&
    getDistance(first, pressed) <= reach;
  const lifted = { ...state, gesture: { ...gesture, pressed: null } };
  if (isOnLast || isOnFirst) return finishDrawing(lifted, environment);
  const next = { ...gesture, pressed: null, points: [...points, pressed] };
  const grown = { ...state, gesture: next };
  return next.points.length >= MAX_SHAPE_POINTS ? finishDrawing(grown, environment) : keep(grown);
}

/** The pointer went up. */
export function releaseToDraw<M extends DrawnMark>(
  state: EditorState<M>,
  environment: EditorEnvironment<M>,
  reach: number,
): EditorStep<M> {
  const { gesture } = state;
  if (gesture?.kind === "placing-dot") {
    const { view, at } = gesture;
    return placeShape({ ...state, gesture: null }, environment, view, toShape("dot", [at]));
  }
  return gesture?.kind === "drawing" ? releaseDrawing(state, environment, gesture, reach) : keep(state);
}

/** The drawing without its last corner; without any, no drawing. */
export function takeBackPoint<M extends DrawnMark>(state: EditorState<M>): EditorState<M> {
  const { gesture } = state;
  if (gesture?.kind !== "drawing") return state;
  const points = gesture.points.slice(0, -1);
  return { ...state, gesture: points.length === 0 ? null : { ...gesture, points, pressed: null } };
}
