/** An editor that is open: its state, who listens, and whom it tells of every change. No React, no DOM. */
import { type MarksChange, toMarksChange } from "@/lib/editor/document-change";
import type { DrawnMark } from "@/lib/editor/drawn-mark";
import type { EditorAction } from "@/lib/editor/editor-action";
import type { EditorEnvironment, EditorState } from "@/lib/editor/editor-state";
import { listMarks } from "@/lib/editor/plot-document";
import { reduceEditor } from "@/lib/editor/reduce-editor";

/** Told once for each undo entry, and once for each step of undo or redo, with all marks in order after it. */
export type MarksListener<M extends DrawnMark> = (change: MarksChange<M>, marks: readonly M[]) => void;

export interface EditorStore<M extends DrawnMark> {
  readonly getState: () => EditorState<M>;
  readonly dispatch: (action: EditorAction<M>) => void;
  /** Calls back after each new state; returns what ends it. */
  readonly subscribe: (listener: () => void) => () => void;
  /** Puts another environment in place (a new clock, read-only or not) without touching the state. */
  readonly setEnvironment: (environment: EditorEnvironment<M>) => void;
  readonly getEnvironment: () => EditorEnvironment<M>;
}

/** Opens an editor on a state. `onChange` is called after the state is in place and before the listeners. */
export function createEditorStore<M extends DrawnMark>(
  initial: EditorState<M>,
  environment: EditorEnvironment<M>,
  onChange: MarksListener<M>,
): EditorStore<M> {
  let state = initial;
  let current = environment;
  const listeners = new Set<() => void>();
  return {
    getState: () => state,
    getEnvironment: () => current,
    setEnvironment: (next) => {
      current = next;
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    dispatch: (action) => {
      const step = reduceEditor(state, current, action);
      if (step.state === state) return;
      state = step.state;
      for (const change of step.changes) onChange(toMarksChange(change), listMarks(state.document));
      for (const listener of listeners) listener();
    },
  };
}
