import { can } from "@/lib/access/can";
import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { listWatch } from "@/lib/data/list-watch";
import { listWatchedAmong } from "@/lib/data/store/list-watched";
import type { WatchedRow } from "@/lib/data/store/to-watch-row";
import { listenForSittings } from "@/lib/data/store/watch-bus";
import type { Watch, WatchChange } from "@/lib/plot/watch-view";

/** What somebody who watches is told: everything, or what became different. */
export type WatchWord =
  | { readonly kind: "whole"; readonly watch: Watch }
  | { readonly kind: "change"; readonly change: WatchChange };

export interface WatchFollowing {
  /** Tells everything again, as it stands in the database. */
  readonly tellWhole: () => Promise<void>;
  readonly end: () => void;
}

interface Follower {
  readonly viewer: Viewer;
  readonly tell: (word: WatchWord) => void;
  /** Sittings that the viewer was told of: only of these is it said that they are gone. */
  known: Set<string>;
  /** What changed while everything is being read; null when nothing is. */
  held: Set<string> | null;
}

interface Followers {
  readonly all: Set<Follower>;
  stop: (() => void) | null;
}

// One per process, so that a change is read once however many watch.
const holder = globalThis as typeof globalThis & { loupeworkFollowers?: Followers };

async function readRows(ids: ReadonlySet<string>): Promise<Map<string, WatchedRow>> {
  const rows = await listWatchedAmong(ids);
  return new Map(rows.map((watched) => [watched.row.sittingId, watched]));
}

function tellChange(follower: Follower, ids: ReadonlySet<string>, byId: Map<string, WatchedRow>): void {
  const { viewer, known } = follower;
  const mine = [...byId.values()].filter(
    (watched) => ids.has(watched.row.sittingId) && can(viewer, "watch-benches", watched),
  );
  const put = mine.map(({ row }) => row);
  for (const { sittingId } of put) known.add(sittingId);
  const kept = new Set(put.map(({ sittingId }) => sittingId));
  const removed = [...ids].filter((id) => !kept.has(id) && known.delete(id));
  if (put.length === 0 && removed.length === 0) return;
  // Each row was parsed when it was read; parsing it again for each who watches would cost as much as reading it.
  follower.tell({ kind: "change", change: { readAt: new Date().toISOString(), put, removed } });
}

function startListening(followers: Followers): void {
  followers.stop ??= listenForSittings(async (ids) => {
    const byId = await readRows(ids);
    for (const follower of followers.all) {
      if (follower.held === null) tellChange(follower, ids, byId);
      else for (const id of ids) follower.held.add(id);
    }
  });
}

/** Everything first; what changed while it was read comes after it, read again. */
async function tellWhole(follower: Follower): Promise<void> {
  if (follower.held !== null) return;
  const held = new Set<string>();
  follower.held = held;
  try {
    const watch = await listWatch(follower.viewer);
    follower.known = new Set(watch.rows.map(({ sittingId }) => sittingId));
    follower.tell({ kind: "whole", watch });
  } finally {
    follower.held = null;
  }
  if (held.size > 0) tellChange(follower, held, await readRows(held));
}

/**
 * Tells a viewer of the class as it happens: everything first, and from then on each change of a sitting that they may
 * watch. Who teaches a section is asked of the database with each. Throws AppError `not-found` to a student.
 */
export async function followWatch(viewer: Viewer, tell: (word: WatchWord) => void): Promise<WatchFollowing> {
  requireRole(viewer, "watch-benches");
  holder.loupeworkFollowers ??= { all: new Set(), stop: null };
  const followers = holder.loupeworkFollowers;
  const follower: Follower = { viewer, tell, known: new Set(), held: null };
  const end = () => {
    followers.all.delete(follower);
    if (followers.all.size > 0) return;
    followers.stop?.();
    followers.stop = null;
  };
  followers.all.add(follower);
  startListening(followers);
  try {
    await tellWhole(follower);
  } catch (thrown) {
    end();
    throw thrown;
  }
  return { tellWhole: () => tellWhole(follower), end };
}
