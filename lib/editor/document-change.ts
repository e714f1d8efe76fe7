/**
 * A change to a document: what was added, what became what, and what was removed. Pure; laws in SPEC.md 2. Each of
 * the three parts is keyed by id and no id stands in two of them.
 */
import type { DrawnMark } from "@/lib/editor/drawn-mark";
import type { DocumentRecord, PlotDocument } from "@/lib/editor/plot-document";

type Records<M extends DrawnMark> = ReadonlyMap<string, DocumentRecord<M>>;
type Pair<M extends DrawnMark> = readonly [from: DocumentRecord<M>, to: DocumentRecord<M>];

export interface DocumentChange<M extends DrawnMark> {
  readonly added: Records<M>;
  readonly updated: ReadonlyMap<string, Pair<M>>;
  readonly removed: Records<M>;
}

/** The change that changes nothing. */
export function createEmptyChange<M extends DrawnMark>(): DocumentChange<M> {
  return { added: new Map(), updated: new Map(), removed: new Map() };
}

/** The change that adds one mark. */
export function createAddition<M extends DrawnMark>(record: DocumentRecord<M>): DocumentChange<M> {
  return { ...createEmptyChange<M>(), added: new Map([[record.mark.id, record]]) };
}

/** The change that replaces one mark, keeping its place. Throws RangeError when the ids differ. */
export function createUpdate<M extends DrawnMark>(from: DocumentRecord<M>, mark: M): DocumentChange<M> {
  if (from.mark.id !== mark.id) throw new RangeError("createUpdate: a mark keeps its id");
  return { ...createEmptyChange<M>(), updated: new Map([[mark.id, [from, { mark, order: from.order }]]]) };
}

/** The change that removes marks. */
export function createRemoval<M extends DrawnMark>(records: readonly DocumentRecord<M>[]): DocumentChange<M> {
  return {
    ...createEmptyChange<M>(),
    removed: new Map(records.map((record) => [record.mark.id, record])),
  };
}

/** True when nothing changes. */
export function isEmptyChange<M extends DrawnMark>(change: DocumentChange<M>): boolean {
  return change.added.size + change.updated.size + change.removed.size === 0;
}

/** The document after the change; the one given is left as it is. */
export function applyChange<M extends DrawnMark>(
  document: PlotDocument<M>,
  change: DocumentChange<M>,
): PlotDocument<M> {
  if (isEmptyChange(change)) return document;
  const byId = new Map(document.byId);
  for (const id of change.removed.keys()) byId.delete(id);
  for (const [id, record] of change.added) byId.set(id, record);
  for (const [id, [, to]] of change.updated) byId.set(id, to);
  return { byId };
}

/** The change that takes this one back. */
export function reverseChange<M extends DrawnMark>(change: DocumentChange<M>): DocumentChange<M> {
  return {
    added: new Map(change.removed),
    updated: new Map([...change.updated].map(([id, [from, to]]) => [id, [to, from] as const])),
    removed: new Map(change.added),
  };
}

/** One change that does what the given changes do one after the other. Of none: the empty change. */
export function squashChanges<M extends DrawnMark>(changes: readonly DocumentChange<M>[]): DocumentChange<M> {
  const first = new Map<string, DocumentRecord<M> | null>();
  const last = new Map<string, DocumentRecord<M> | null>();
  const note = (id: string, from: DocumentRecord<M> | null, to: DocumentRecord<M> | null) => {
    if (!first.has(id)) first.set(id, from);
    last.set(id, to);
  };
  for (const { removed, added, updated } of changes) {
    for (const [id, record] of removed) note(id, record, null);
    for (const [id, record] of added) note(id, null, record);
    for (const [id, [from, to]] of updated) note(id, from, to);
  }
  const out = { added: new Map(), updated: new Map(), removed: new Map() };
  for (const [id, from] of first) {
    const to = last.get(id) ?? null;
    if (from === null && to !== null) out.added.set(id, to);
    else if (from !== null && to === null) out.removed.set(id, from);
    else if (from !== null && to !== null && from !== to) out.updated.set(id, [from, to]);
  }
  return out;
}

/** A change as the log of a sitting keeps it: marks put whole, and ids removed. */
export interface MarksChange<M extends DrawnMark> {
  readonly put: readonly M[];
  readonly removed: readonly string[];
}

/** A change as a `marks` event of the log; added marks in the order of drawing, then the replaced ones. */
export function toMarksChange<M extends DrawnMark>(change: DocumentChange<M>): MarksChange<M> {
  const added = [...change.added.values()].sort((a, b) => a.order - b.order).map(({ mark }) => mark);
  return {
    put: [...added, ...[...change.updated.values()].map(([, to]) => to.mark)],
    removed: [...change.removed.keys()],
  };
}
