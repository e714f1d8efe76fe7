/** What can be undone and redone: one entry for each gesture. Selection, hover, zoom and tool are not kept. */
import { type DocumentChange, isEmptyChange, reverseChange } from "@/lib/editor/document-change";
import type { DrawnMark } from "@/lib/editor/drawn-mark";

export interface EditHistory<M extends DrawnMark> {
  /** Changes made, oldest first. */
  readonly done: readonly DocumentChange<M>[];
  /** Changes taken back, the one to redo next last. */
  readonly undone: readonly DocumentChange<M>[];
}

/** Older entries than this are forgotten. */
export const MAX_UNDO_ENTRIES = 500;

/** A history of nothing. */
export function createHistory<M extends DrawnMark>(): EditHistory<M> {
  return { done: [], undone: [] };
}

/** The history with one more entry; what was taken back can no longer be redone. An empty change is not kept. */
export function recordChange<M extends DrawnMark>(
  history: EditHistory<M>,
  change: DocumentChange<M>,
): EditHistory<M> {
  if (isEmptyChange(change)) return history;
  return { done: [...history.done, change].slice(-MAX_UNDO_ENTRIES), undone: [] };
}

interface HistoryStep<M extends DrawnMark> {
  readonly history: EditHistory<M>;
  /** To be applied to the document. */
  readonly change: DocumentChange<M>;
}

/** Takes the last entry back; null when there is none. */
export function undoChange<M extends DrawnMark>(history: EditHistory<M>): HistoryStep<M> | null {
  const last = history.done.at(-1);
  if (last === undefined) return null;
  return {
    history: { done: history.done.slice(0, -1), undone: [...history.undone, last] },
    change: reverseChange(last),
  };
}

/** Makes the entry last taken back again; null when there is none. */
export function redoChange<M extends DrawnMark>(history: EditHistory<M>): HistoryStep<M> | null {
  const last = history.undone.at(-1);
  if (last === undefined) return null;
  return {
    history: { done: [...history.done, last], undone: history.undone.slice(0, -1) },
    change: last,
  };
}
