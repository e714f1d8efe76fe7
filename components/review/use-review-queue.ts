"use client";

/** The review that is shown, and the ones beside it, fetched before they are asked for. */
import { useCallback, useEffect, useRef, useState } from "react";
import type { QueueItem } from "@/components/review/list-queue";
import { noteReviewed } from "@/components/review/reviewed-flag";
import { type ReviewView, ReviewViewSchema } from "@/lib/plot/review-view";

/** So long after a plot is shown, its neighbours are fetched and itself is looked at again. */
const SETTLE_MS = 60;
/** What was fetched longer ago than this is fetched anew before it is shown. */
const FRESH_MS = 5 * 60_000;

interface Kept {
  readonly at: number;
  readonly view: ReviewView;
}

async function fetchReview(sittingId: string): Promise<ReviewView> {
  const response = await fetch(`/api/sittings/${sittingId}/review`);
  const body: unknown = await response.json();
  if (!response.ok) {
    const message = (body as { message?: unknown }).message;
    throw new Error(typeof message === "string" ? message : "The server did not answer.");
  }
  return ReviewViewSchema.parse(body);
}

export interface ReviewQueue {
  readonly view: ReviewView;
  /** Place in the queue, from 0; -1 for a plot that the filter leaves out. */
  readonly at: number;
  readonly isWaiting: boolean;
  readonly failure: string | null;
  readonly go: (step: 1 | -1) => void;
  /** Shows a review as the server answered it. */
  readonly put: (view: ReviewView) => void;
  /** Reads the shown review again. */
  readonly reload: () => Promise<void>;
}

export function useReviewQueue(
  initial: ReviewView,
  queue: readonly QueueItem[],
  toAddress: (sittingId: string) => string,
): ReviewQueue {
  const [view, setView] = useState(initial);
  const [isWaiting, setWaiting] = useState(false);
  const [failure, setFailure] = useState<string | null>(null);
  const kept = useRef(new Map<string, Kept>());
  const wanted = useRef(initial.debrief.sittingId);
  const shownId = view.debrief.sittingId;
  const at = queue.findIndex(({ sittingId }) => sittingId === shownId);

  const keep = useCallback((next: ReviewView) => {
    kept.current.set(next.debrief.sittingId, { at: Date.now(), view: next });
    return next;
  }, []);
  const put = useCallback(
    (next: ReviewView) => {
      noteReviewed();
      keep(next);
      if (next.debrief.sittingId !== wanted.current) return;
      // The same again is nothing to draw again.
      setView((before) => (JSON.stringify(before) === JSON.stringify(next) ? before : next));
    },
    [keep],
  );
  const reload = useCallback(async () => put(await fetchReview(wanted.current)), [put]);

  useEffect(() => {
    const timer = window.setTimeout(async () => {
      for (const one of [queue[at + 1], queue[at - 1], queue[at + 2]]) {
        if (at < 0 || one === undefined || kept.current.has(one.sittingId)) continue;
        // A neighbour that cannot be had now is asked for again when it is wanted.
        await fetchReview(one.sittingId).then(keep, () => undefined);
      }
    }, SETTLE_MS);
    return () => window.clearTimeout(timer);
  }, [queue, at, keep]);

  const go = useCallback(
    (step: 1 | -1) => {
      const to = queue[queue.findIndex(({ sittingId }) => sittingId === wanted.current) + step];
      if (to === undefined) return;
      wanted.current = to.sittingId;
      setFailure(null);
      const known = kept.current.get(to.sittingId);
      const isFresh = known !== undefined && Date.now() - known.at < FRESH_MS;
      window.history.replaceState(null, "", toAddress(to.sittingId));
      if (isFresh) setView(known.view);
      setWaiting(!isFresh);
      // What is kept may be older than what another reviewer did: it is read again behind what is shown.
      fetchReview(to.sittingId)
        .then(put, (thrown: Error) => {
          if (!isFresh) setFailure(thrown.message);
        })
        .finally(() => setWaiting(false));
    },
    [queue, put, toAddress],
  );
  return { view, at, isWaiting, failure, go, put, reload };
}
