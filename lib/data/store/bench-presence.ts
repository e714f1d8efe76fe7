/**
 * Which benches are open now. Kept in memory alone: it is worth nothing after a restart, and a disk write for each
 * beat of each bench would cost more than it tells.
 */
import "server-only";
import { announceSittings } from "@/lib/data/store/watch-bus";
import type { Presence } from "@/lib/plot/watch-view";

/** A bench beats every 20 seconds; one that was not heard of for this long is gone, ms. */
export const GONE_AFTER_MS = 50_000;
/** Longer than a session lasts: nothing of it is worth keeping. */
const FORGET_AFTER_MS = 13 * 60 * 60 * 1000;
const SWEEP_MS = 5_000;

export interface Heard {
  readonly presence: Exclude<Presence, "unheard">;
  /** Ms since 1970, by the server's clock. */
  readonly sinceMs: number;
  readonly heardMs: number;
}

interface Benches {
  readonly bySitting: Map<string, Heard>;
  timer: ReturnType<typeof setInterval> | null;
}

// One per process: the framework loads this file once for pages and once for routes.
const holder = globalThis as typeof globalThis & { loupeworkBenches?: Benches };

function getBenches(): Benches {
  holder.loupeworkBenches ??= { bySitting: new Map(), timer: null };
  return holder.loupeworkBenches;
}

/** Benches that have fallen silent are gone, since they were last heard of. */
function sweep({ bySitting }: Benches, nowMs: number): void {
  for (const [sittingId, heard] of bySitting) {
    if (nowMs - heard.heardMs > FORGET_AFTER_MS) bySitting.delete(sittingId);
    else if (heard.presence !== "gone" && nowMs - heard.heardMs > GONE_AFTER_MS) {
      bySitting.set(sittingId, { ...heard, presence: "gone", sinceMs: heard.heardMs });
      announceSittings(sittingId);
    }
  }
}

/**
 * Notes that a bench was heard of. The caller has asked whether the sitting is the viewer's own. Nothing is announced
 * unless it came, went, or was looked at or away from.
 */
export function notePresence(sittingId: string, presence: Heard["presence"], nowMs = Date.now()): void {
  const benches = getBenches();
  const before = benches.bySitting.get(sittingId);
  const isSame = before?.presence === presence;
  benches.bySitting.set(sittingId, {
    presence,
    sinceMs: isSame ? before.sinceMs : nowMs,
    heardMs: presence === "gone" && before !== undefined ? before.heardMs : nowMs,
  });
  if (!isSame) announceSittings(sittingId);
  if (benches.timer === null) {
    benches.timer = setInterval(() => sweep(benches, Date.now()), SWEEP_MS);
    benches.timer.unref();
  }
}

/** Notes work that came in from a bench: it is open; whether it is looked at stays as it was. */
export function noteWork(sittingId: string): void {
  const before = getBenches().bySitting.get(sittingId);
  notePresence(sittingId, before?.presence === "away" ? "away" : "here");
}

/** What is known of a bench now; null when it was not heard of since the server started. */
export function findPresence(sittingId: string, nowMs = Date.now()): Heard | null {
  const heard = getBenches().bySitting.get(sittingId) ?? null;
  if (heard === null || heard.presence === "gone" || nowMs - heard.heardMs <= GONE_AFTER_MS) return heard;
  return { ...heard, presence: "gone", sinceMs: heard.heardMs };
}

/** The sittings whose benches are open now. */
export function listOpenBenches(nowMs = Date.now()): string[] {
  return [...getBenches().bySitting.keys()].filter((id) => findPresence(id, nowMs)?.presence !== "gone");
}
