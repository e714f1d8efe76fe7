/** Says, within this process, that a bench was sent a note. A bench hears of its own sitting and of nothing else. */
import "server-only";

type NoteListener = () => Promise<void>;

// One per process: the framework loads this file once for pages and once for routes.
const holder = globalThis as typeof globalThis & { loupeworkNoteBus?: Map<string, Set<NoteListener>> };

function getListeners(): Map<string, Set<NoteListener>> {
  holder.loupeworkNoteBus ??= new Map();
  return holder.loupeworkNoteBus;
}

/** Says that sittings were sent a note. Call it once the note is on disk. */
export function announceNotes(sittingIds: readonly string[]): void {
  for (const sittingId of sittingIds) {
    for (const listener of getListeners().get(sittingId) ?? []) {
      listener().catch((thrown: unknown) => console.error("a note was not passed on", thrown));
    }
  }
}

/** Hears of notes to one sitting from now on; returns what ends it. */
export function listenForNotes(sittingId: string, listener: NoteListener): () => void {
  const all = getListeners();
  const own = all.get(sittingId) ?? new Set();
  own.add(listener);
  all.set(sittingId, own);
  return () => {
    own.delete(listener);
    if (own.size === 0) all.delete(sittingId);
  };
}
