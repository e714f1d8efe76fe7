/**
 * Says, within this process, which sittings have changed. A sitting is named, nothing more: whoever hears reads the
 * database, where the truth is, and asks lib/access before anything is passed on. Changes of a short while are said
 * together and once, so that many saves cost one read.
 */
import "server-only";

/** Changes are gathered for this long, ms: far below what somebody who watches would notice. */
const GATHER_MS = 400;

/** Hears the ids of sittings that changed; the next are said once it has settled. */
export type BusListener = (sittingIds: ReadonlySet<string>) => Promise<void> | void;

interface Bus {
  changed: Set<string>;
  timer: ReturnType<typeof setTimeout> | null;
  isSaying: boolean;
  readonly listeners: Set<BusListener>;
}

// One per process: the framework loads this file once for pages and once for routes.
const holder = globalThis as typeof globalThis & { loupeworkWatchBus?: Bus };

function getBus(): Bus {
  holder.loupeworkWatchBus ??= { changed: new Set(), timer: null, isSaying: false, listeners: new Set() };
  return holder.loupeworkWatchBus;
}

async function say(bus: Bus): Promise<void> {
  bus.timer = null;
  const changed = bus.changed;
  bus.changed = new Set();
  bus.isSaying = true;
  const results = await Promise.allSettled([...bus.listeners].map(async (listener) => listener(changed)));
  bus.isSaying = false;
  for (const result of results) if (result.status === "rejected") console.error(result.reason);
  if (bus.changed.size > 0) schedule(bus);
}

function schedule(bus: Bus): void {
  if (bus.timer !== null || bus.isSaying) return;
  bus.timer = setTimeout(() => void say(bus), GATHER_MS);
  bus.timer.unref();
}

/** Says that sittings have changed. Call it once the change is on disk, never within its transaction. */
export function announceSittings(...sittingIds: readonly string[]): void {
  const bus = getBus();
  if (bus.listeners.size === 0) return;
  for (const sittingId of sittingIds) bus.changed.add(sittingId);
  schedule(bus);
}

/** Hears of changes from now on; returns what ends it. */
export function listenForSittings(listener: BusListener): () => void {
  const { listeners } = getBus();
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
  };
}
