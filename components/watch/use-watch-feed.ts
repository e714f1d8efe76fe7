"use client";

import { useEffect, useState, useSyncExternalStore } from "react";
import { type FeedState, type WatchAnswer, WatchFeed } from "@/components/watch/watch-feed";
import type { Watch } from "@/lib/plot/watch-view";

const PATIENCE_MS = 8000;

async function ask(): Promise<WatchAnswer> {
  try {
    const answer = await fetch("/api/watch", { cache: "no-store", signal: AbortSignal.timeout(PATIENCE_MS) });
    if (answer.ok) return { kind: "whole", watch: await answer.json() };
    return { kind: answer.status >= 500 ? "unreached" : "refused" };
  } catch {
    return { kind: "unreached" };
  }
}

/** The class as it happens, from what the page was given on. */
export function useWatchFeed(first: Watch): FeedState {
  const [feed] = useState(
    () =>
      new WatchFeed({
        first,
        openSource: () => new EventSource("/api/watch/stream"),
        ask,
        nowMs: () => Date.now(),
      }),
  );
  useEffect(() => {
    feed.start();
    return feed.stop;
  }, [feed]);
  return useSyncExternalStore(feed.subscribe, feed.getState, feed.getState);
}
