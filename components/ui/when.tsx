"use client";

import { useSyncExternalStore } from "react";

const MINUTE_MS = 60_000;
const TICK_MS = 20_000;
const listeners = new Set<() => void>();
let timer: ReturnType<typeof setInterval> | null = null;
let latestMs = Date.now();

/** One clock for all times on the page; it ticks while anything listens. */
function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  if (timer === null) {
    latestMs = Date.now();
    timer = setInterval(() => {
      latestMs = Date.now();
      for (const one of listeners) one();
    }, TICK_MS);
  }
  return () => {
    listeners.delete(listener);
    if (listeners.size === 0 && timer !== null) {
      clearInterval(timer);
      timer = null;
    }
  };
}

const readClock = (): number | null => latestMs;
const readNothing = (): number | null => null;

const DATE_STYLE = { weekday: "short", day: "numeric", month: "short" } as const;
const TIME_STYLE = { hour: "2-digit", minute: "2-digit", hourCycle: "h23" } as const;

function toAbsolute(at: Date, nowMs: number, withTime: boolean): string {
  const otherYear = Math.abs(at.getTime() - nowMs) > 300 * 86_400_000;
  return at.toLocaleString("en-GB", {
    ...DATE_STYLE,
    ...(otherYear ? { year: "numeric" } : {}),
    ...(withTime ? TIME_STYLE : {}),
  });
}

const STEPS = [
  [86_400_000 * 14, 86_400_000 * 7, "week"],
  [86_400_000 * 1.5, 86_400_000, "day"],
  [3_600_000 * 1.5, 3_600_000, "hour"],
  [0, MINUTE_MS, "minute"],
] as const;
const relative = new Intl.RelativeTimeFormat("en-GB", { numeric: "auto" });

/** "in 3 days", "2 hours ago", "this minute". */
export function toRelative(atMs: number, nowMs: number): string {
  const between = atMs - nowMs;
  const [, unitMs, unit] = STEPS.find(([from]) => Math.abs(between) >= from) ?? STEPS[3];
  return relative.format(Math.round(between / unitMs), unit);
}

export interface WhenProps {
  iso: string;
  /** `absolute` (default), `relative`, or both. */
  show?: "absolute" | "relative" | "both";
  withTime?: boolean;
  /** What the server's clock is ahead of the browser's, ms: "in 5 minutes" is then the server's. */
  aheadMs?: number;
}

/** What the server draws: as long as what will stand there, so that nothing on the page moves when it does. */
function toPlaceholder(iso: string, withTime: boolean): string {
  const style = { ...DATE_STYLE, ...(withTime ? TIME_STYLE : {}), timeZone: "UTC" };
  return new Date(iso).toLocaleString("en-GB", style);
}

/**
 * A moment in the reader's own time zone. The server cannot know the zone, so its HTML keeps the place with the
 * moment in UTC, unseen, and the browser replaces it once it runs; both first draw the same, so there is no mismatch.
 */
export function When({ iso, show = "absolute", withTime = true, aheadMs = 0 }: WhenProps) {
  const browserMs = useSyncExternalStore(subscribe, readClock, readNothing);
  if (browserMs === null) {
    return (
      <time dateTime={iso} style={{ visibility: "hidden" }}>
        {toPlaceholder(iso, withTime)}
      </time>
    );
  }
  const at = new Date(iso);
  const nowMs = browserMs + aheadMs;
  const absolute = toAbsolute(at, nowMs, withTime);
  const away = toRelative(at.getTime(), nowMs);
  return (
    <time dateTime={iso} title={show === "relative" ? absolute : away}>
      {show === "relative" ? away : absolute}
      {show === "both" && <span className="muted"> · {away}</span>}
    </time>
  );
}
