/** Putting a new mark on the plot (SPEC.md 3 to 5). */
import { checkOutline, closeOutline } from "@/lib/editor/close-outline";
import { createAddition } from "@/lib/editor/document-change";
import { type DrawnMark, isSameSubject, type MarkSubject, toShape } from "@/lib/editor/drawn-mark";
import {
  commit,
  type EditorEnvironment,
  type EditorState,
  type EditorStep,
  refuse,
} from "@/lib/editor/editor-state";
import { clampShapeInside, isShapeInside } from "@/lib/editor/keep-inside";
import { getLineLength } from "@/lib/editor/measure-shape";
import { getNextOrder } from "@/lib/editor/plot-document";
import { thinLine } from "@/lib/editor/thin-line";
import type { Point, View } from "@/lib/gem/point";
import { MAX_MARKS } from "@/lib/plot/mark";
import type { Shape } from "@/lib/plot/shape";

const MAX_RECENT = 4;
/** A stroke shorter than this is a slip of the hand: a thousandth of the girdle width. */
const LEAST_STROKE = 1e-3;

export const REFUSALS = {
  outside: "That is outside the girdle. Marks belong on the stone.",
  crosses: "The outline crosses itself. Draw around the feature once.",
  flat: "That outline encloses nothing. Use a stroke for a line, a dot for a speck.",
  short: "That stroke is too short to see. Use a dot for a speck.",
  noSubject: "First choose what you see.",
  full: `A plot holds at most ${MAX_MARKS} marks.`,
} as const;

/**
 * Adds a mark of the given subject. Refuses, with a notice, when the plot is full, or the shape crosses itself,
 * encloses nothing or lies outside the girdle.
 */
export function addShape<M extends DrawnMark>(
  state: EditorState<M>,
  environment: EditorEnvironment<M>,
  { view, shape, subject }: { view: View; shape: Shape; subject: MarkSubject },
): EditorStep<M> {
  if (state.document.byId.size >= MAX_MARKS) return refuse(state, "full", REFUSALS.full);
  if (shape.kind === "outline") {
    const checked = checkOutline(shape.points);
    if (!checked.ok) return refuse(state, checked.why, REFUSALS[checked.why]);
  }
  if (!isShapeInside(environment.frame, view, shape)) return refuse(state, "outside", REFUSALS.outside);
  const id = environment.takeId();
  const mark = environment.createMark({ id, view, shape, subject, atMs: environment.nowMs() });
  return commit(state, createAddition({ mark, order: getNextOrder(state.document) }));
}

/** Adds a mark of the chosen subject and selects it. Refuses as `addShape` does, and when nothing is chosen. */
export function placeShape<M extends DrawnMark>(
  state: EditorState<M>,
  environment: EditorEnvironment<M>,
  view: View,
  shape: Shape,
): EditorStep<M> {
  const { subject } = state;
  if (subject === null) return refuse(state, "no-subject", REFUSALS.noSubject);
  const step = addShape(state, environment, { view, shape, subject });
  const [selectedId] = step.changes[0]?.added.keys() ?? [];
  if (selectedId === undefined) return step;
  const recent = [subject, ...state.recent.filter((one) => !isSameSubject(one, subject))];
  const next = { ...step.state, recent: recent.slice(0, MAX_RECENT), selectedId, selectedVertex: null };
  return { state: next, changes: step.changes };
}

/** Places what was drawn in one drag: clamped to the girdle, closed if an outline, and thinned to `tolerance`. */
export function placeFreehand<M extends DrawnMark>(
  state: EditorState<M>,
  environment: EditorEnvironment<M>,
  drawn: { view: View; kind: "stroke" | "outline"; line: readonly Point[]; tolerance: number },
): EditorStep<M> {
  const { view, kind, line, tolerance } = drawn;
  if (kind === "stroke") {
    if (getLineLength(line) < LEAST_STROKE) return refuse(state, "flat", REFUSALS.short);
    const shape = clampShapeInside(environment.frame, view, toShape(kind, thinLine(line, tolerance)));
    return placeShape(state, environment, view, shape);
  }
  const closed = closeOutline(line, tolerance);
  if (!closed.ok) return refuse(state, closed.why, REFUSALS[closed.why]);
  return placeShape(
    state,
    environment,
    view,
    clampShapeInside(environment.frame, view, toShape(kind, closed.points)),
  );
}
