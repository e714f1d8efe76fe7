/** An editor on a round brilliant with a clock and ids that a test controls. */
import { createPlottedMark } from "@/lib/editor/create-mark";
import type { MarksChange } from "@/lib/editor/document-change";
import type { EditorAction } from "@/lib/editor/editor-action";
import { createEditorState, type EditorEnvironment, type Tool } from "@/lib/editor/editor-state";
import { createEditorStore } from "@/lib/editor/editor-store";
import { listMarks } from "@/lib/editor/plot-document";
import { createStoneFrame, type StoneFrame } from "@/lib/editor/stone-frame";
import { createIdSupply } from "@/lib/editor/supply-ids";
import { getSolid } from "@/lib/gem/build-solid";
import type { Point, View } from "@/lib/gem/point";
import type { PlottedMark } from "@/lib/plot/mark";

export const ROUND_FRAME: StoneFrame = createStoneFrame(getSolid("round-brilliant", {}));
export const REACH = 0.02;

export interface EditorHarness {
  readonly dispatch: (action: EditorAction<PlottedMark>) => void;
  readonly state: () => ReturnType<ReturnType<typeof createEditorStore<PlottedMark>>["getState"]>;
  readonly marks: () => readonly PlottedMark[];
  /** What was told through `onChange`, in order. */
  readonly told: MarksChange<PlottedMark>[];
  readonly press: (at: Point, view?: View) => void;
  readonly drag: (...points: Point[]) => void;
  readonly release: () => void;
  readonly click: (at: Point, view?: View) => void;
}

/** Opens an editor; `subject` crystal and the select tool unless a tool is given. */
export function openEditor(
  marks: readonly PlottedMark[] = [],
  options: { tool?: Tool; readOnly?: boolean; hasSubject?: boolean } = {},
): EditorHarness {
  const { tool = "select", readOnly = false, hasSubject = true } = options;
  let nowMs = 0;
  const environment: EditorEnvironment<PlottedMark> = {
    frame: ROUND_FRAME,
    createMark: createPlottedMark,
    takeId: createIdSupply(
      marks.map(({ id }) => id),
      "",
    ),
    nowMs: () => {
      nowMs += 1000;
      return nowMs;
    },
    readOnly,
  };
  const told: MarksChange<PlottedMark>[] = [];
  const subject = hasSubject ? ({ kind: "characteristic", name: "crystal" } as const) : null;
  const store = createEditorStore(createEditorState(marks, tool, subject), environment, (change) =>
    told.push(change),
  );
  const { dispatch, getState } = store;
  const press = (at: Point, view: View = "crown") =>
    dispatch({ kind: "press", place: { view, at }, reach: REACH });
  const release = () => dispatch({ kind: "release", reach: REACH });
  return {
    dispatch,
    state: getState,
    marks: () => listMarks(getState().document),
    told,
    press,
    drag: (...points) => dispatch({ kind: "drag", points, reach: REACH }),
    release,
    click: (at, view) => {
      press(at, view);
      release();
    },
  };
}

/** A crystal at a point of the crown. */
export function createDot(id: string, at: [number, number], atMs?: number): PlottedMark {
  const shape = { kind: "dot", at } as const;
  const mark = { id, view: "crown", characteristic: "crystal", shape } as const;
  return atMs === undefined
    ? { ...mark, shape: { ...shape, at: [...at] } }
    : { ...mark, shape: { ...shape, at: [...at] }, atMs };
}
