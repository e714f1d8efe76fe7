"use client";

import { useCallback, useEffect, useState, useSyncExternalStore } from "react";
import { type BenchClock, createBenchClock } from "@/components/bench/bench-clock";
import { openBenchDoor } from "@/components/bench/bench-door";
import { openEventStore } from "@/components/bench/event-store";
import { type HeldWriter, holdWriterId } from "@/components/bench/hold-writer-id";
import { openPreviewSaving } from "@/components/bench/open-preview-saving";
import { SaveClient } from "@/components/bench/save-client";
import type { SaveState } from "@/components/bench/save-state";
import type { SittingState } from "@/lib/plot/sitting-event";
import type { BenchView } from "@/lib/plot/student-view";

/** How often an idle bench asks whether it is still the one that writes. */
const CHECK_MS = 15_000;

export interface Saving {
  readonly state: SaveState;
  readonly client: SaveClient | null;
  readonly clock: BenchClock;
  /** When the time runs out, as the server last said; null without a limit. */
  readonly endsAt: string | null;
  /** Writes here from now on; the page is read afresh when somebody else has written meanwhile. */
  readonly takeOver: () => Promise<void>;
}

function toSitting(view: BenchView): SittingState {
  return { plot: view.plot, prepared: view.prepared, lastSeq: view.lastSeq };
}

function toOpeningState(view: BenchView): SaveState {
  return {
    word: "opening",
    sitting: toSitting(view),
    generation: 0,
    unsavedCount: 0,
    canKeep: true,
    canWrite: false,
    stranded: [],
    mustDecide: false,
    refusal: null,
  };
}

const readAfresh = () => window.location.reload();

interface Opened {
  readonly client: SaveClient;
  readonly writer: HeldWriter;
}

async function openSaving(
  view: BenchView,
  clock: BenchClock,
  onEndsAt: (endsAt: string | null) => void,
  isPreview: boolean,
): Promise<Opened> {
  let opened: Opened | null = null;
  const preview = isPreview ? openPreviewSaving() : null;
  const writer = preview?.writer ?? (await holdWriterId(view.sittingId, () => opened?.client.yieldToOther()));
  const ears = { onServerTime: clock.heed, onEndsAt };
  const client = new SaveClient({
    base: toSitting(view),
    door: preview?.door ?? openBenchDoor(view.sittingId, writer.writerId, ears),
    store: preview?.store ?? openEventStore(view.sittingId),
    sinceOpenedMs: clock.sinceOpenedMs,
    onLogReaches: clock.startFrom,
    onStale: readAfresh,
  });
  opened = { client, writer };
  return opened;
}

/** Tries again when there is reason to: the network is back, or somebody looks at the page. Returns what ends it. */
function watchForChances(client: SaveClient): () => void {
  const retry = () => {
    client.retryNow();
    void client.check();
  };
  const onVisible = () => {
    if (document.visibilityState === "visible") retry();
  };
  const timer = setInterval(() => {
    if (document.visibilityState === "visible") void client.check();
  }, CHECK_MS);
  const onLeave = (event: BeforeUnloadEvent) => {
    const { unsavedCount, canKeep } = client.getState();
    if (unsavedCount > 0 && !canKeep) event.preventDefault();
  };
  window.addEventListener("online", retry);
  window.addEventListener("focus", retry);
  window.addEventListener("beforeunload", onLeave);
  document.addEventListener("visibilitychange", onVisible);
  return () => {
    clearInterval(timer);
    window.removeEventListener("online", retry);
    window.removeEventListener("focus", retry);
    window.removeEventListener("beforeunload", onLeave);
    document.removeEventListener("visibilitychange", onVisible);
  };
}

/** The save client of a bench, opened once the page runs in a browser and closed with it; in a preview it saves nothing. */
export function useSaveClient(view: BenchView, isPreview: boolean): Saving {
  const [clock] = useState(() => {
    const made = createBenchClock(view.openedAt, view.readAt, () => performance.now());
    made.startFrom(view.lastAtMs);
    return made;
  });
  const [endsAt, setEndsAt] = useState(view.endsAt);
  const [opened, setOpened] = useState<Opened | null>(null);
  const [openingState] = useState(() => toOpeningState(view));
  const [firstView] = useState(view);

  useEffect(() => {
    let isGone = false;
    let end = () => {};
    void openSaving(firstView, clock, setEndsAt, isPreview).then((next) => {
      const stopWatching = watchForChances(next.client);
      end = () => {
        stopWatching();
        next.client.dispose();
        next.writer.release();
      };
      if (isGone) return end();
      setOpened(next);
      void next.client.open();
    });
    return () => {
      isGone = true;
      end();
    };
  }, [firstView, clock, isPreview]);

  const client = opened?.client ?? null;
  const subscribe = useCallback(
    (listener: () => void) => client?.subscribe(listener) ?? (() => {}),
    [client],
  );
  const state = useSyncExternalStore(
    subscribe,
    () => client?.getState() ?? openingState,
    () => openingState,
  );
  const takeOver = useCallback(async () => {
    if (opened === null) return;
    opened.writer.keepId();
    await opened.client.open(true);
    opened.writer.announceTakeOver();
  }, [opened]);
  return { state, client, clock, endsAt, takeOver };
}
