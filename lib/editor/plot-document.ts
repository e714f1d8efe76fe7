/**
 * What the editor edits: marks, each with the order in which it was first placed, so that a mark which comes back
 * by undo comes back to its own place and number. Immutable.
 */
import type { DrawnMark } from "@/lib/editor/drawn-mark";

/** A mark and its place in the order of drawing. */
export interface DocumentRecord<M extends DrawnMark> {
  readonly mark: M;
  readonly order: number;
}

/** All marks by id. */
export interface PlotDocument<M extends DrawnMark> {
  readonly byId: ReadonlyMap<string, DocumentRecord<M>>;
}

const getPlacedMs = (mark: DrawnMark): number | null =>
  "atMs" in mark && typeof mark.atMs === "number" ? mark.atMs : null;

/**
 * A document over marks as they were kept. Marks with an `atMs` are put in the order in which they were placed
 * (the log of a sitting appends what an undo brings back), others keep the order given. Throws RangeError when an
 * id stands twice. Empty input gives an empty document.
 */
export function createDocument<M extends DrawnMark>(marks: readonly M[]): PlotDocument<M> {
  const timed = marks.every((mark) => getPlacedMs(mark) !== null);
  const ordered = timed
    ? [...marks].sort((a, b) => (getPlacedMs(a) ?? 0) - (getPlacedMs(b) ?? 0))
    : [...marks];
  const byId = new Map(ordered.map((mark, order) => [mark.id, { mark, order }]));
  if (byId.size !== marks.length) throw new RangeError("createDocument: an id stands twice");
  return { byId };
}

const sortedLists = new WeakMap<object, readonly unknown[]>();

/** The marks in the order of drawing. The same list for the same document. */
export function listMarks<M extends DrawnMark>(document: PlotDocument<M>): readonly M[] {
  const known = sortedLists.get(document) as readonly M[] | undefined;
  if (known !== undefined) return known;
  const list = [...document.byId.values()]
    .sort((a, b) => a.order - b.order || (a.mark.id < b.mark.id ? -1 : 1))
    .map(({ mark }) => mark);
  sortedLists.set(document, list);
  return list;
}

/** The mark with this id, or null. */
export function findMark<M extends DrawnMark>(document: PlotDocument<M>, id: string | null): M | null {
  return id === null ? null : (document.byId.get(id)?.mark ?? null);
}

/** The number of a mark's callout: its place in the order of drawing, from 1; null when it is not there. */
export function findMarkNumber<M extends DrawnMark>(document: PlotDocument<M>, id: string): number | null {
  const index = listMarks(document).findIndex((mark) => mark.id === id);
  return index < 0 ? null : index + 1;
}

/** An order behind every mark of the document. */
export function getNextOrder<M extends DrawnMark>(document: PlotDocument<M>): number {
  let last = -1;
  for (const { order } of document.byId.values()) last = Math.max(last, order);
  return last + 1;
}
