"use client";

/** The review that is shown, and the ones beside it, read before they are asked for. */
import { useCallback, useEffect, useRef, useState } from "react";
import { fetchReview } from "@/components/review/fetch-review";
import { findInQueue, type QueueItem } from "@/components/review/list-queue";
import { createReviewShelf, type ReviewShelf } from "@/components/review/review-shelf";
import { noteReviewed } from "@/components/review/reviewed-flag";
import { getSolid } from "@/lib/gem/build-solid";
import { drawView } from "@/lib/gem/draw-view";
import { VIEWS } from "@/lib/gem/point";
import type { ReviewView } from "@/lib/plot/review-view";

/** So long after a plot is shown, its neighbours are read. */
const SETTLE_MS = 60;

export interface ReviewQueue {
  readonly view: ReviewView;
  /** Place in the queue, from 0; -1 for a plot that the filter leaves out. */
  readonly at: number;
  readonly isWaiting: boolean;
  readonly failure: string | null;
  /** Shows the next plot of the queue, or the one before. */
  readonly go: (step: 1 | -1) => void;
  /** Shows another attempt in its place. */
  readonly open: (sittingId: string) => void;
  /** Shows a review as the server answered it. */
  readonly put: (view: ReviewView) => void;
  /** Reads the shown review again. */
  readonly reload: () => Promise<void>;
}

/** Works out and remembers what the diagram of a plot needs of its stone. */
function prepareStone({ debrief: { stone } }: ReviewView): void {
  const solid = getSolid(stone.cut, stone.proportions);
  for (const view of VIEWS) drawView(solid, view);
}

/** Reads the neighbours of the plot at a place of the queue, the next one first. */
function useNeighbours(shelf: ReviewShelf, queue: readonly QueueItem[], at: number): void {
  useEffect(() => {
    if (at < 0) return;
    const timer = window.setTimeout(async () => {
      for (const one of [queue[at + 1], queue[at - 1], queue[at + 2]]) {
        if (one === undefined || shelf.find(one.sittingId) !== null) continue;
        // A neighbour that cannot be had now is asked for again when it is wanted.
        await shelf.await(one.sittingId).then(prepareStone, () => undefined);
      }
    }, SETTLE_MS);
    return () => window.clearTimeout(timer);
  }, [shelf, queue, at]);
}

/** The same again is nothing to draw again. */
const unlessSame = (next: ReviewView) => (shown: ReviewView) =>
  JSON.stringify(shown) === JSON.stringify(next) ? shown : next;

export function useReviewQueue(
  initial: ReviewView,
  queue: readonly QueueItem[],
  toAddress: (sittingId: string) => string,
): ReviewQueue {
  const [view, setView] = useState(initial);
  const [isWaiting, setWaiting] = useState(false);
  const [failure, setFailure] = useState<string | null>(null);
  const [shelf] = useState(() => {
    const empty = createReviewShelf(fetchReview);
    empty.keep(initial);
    return empty;
  });
  const wanted = useRef(initial.debrief.sittingId);
  const shownId = view.debrief.sittingId;
  const shown = useRef(shownId);
  shown.current = shownId;
  const at = findInQueue(queue, shownId);
  useNeighbours(shelf, queue, at);

  const show = useCallback((next: ReviewView) => {
    noteReviewed();
    if (next.debrief.sittingId === wanted.current) setView(unlessSame(next));
  }, []);
  useEffect(() => {
    // The page may have been fetched a while before it was opened.
    const timer = window.setTimeout(() => shelf.read(wanted.current).then(show, () => undefined), SETTLE_MS);
    return () => window.clearTimeout(timer);
  }, [shelf, show]);
  const put = useCallback(
    (next: ReviewView) => {
      shelf.keep(next);
      show(next);
    },
    [shelf, show],
  );
  const reload = useCallback(async () => show(await shelf.read(wanted.current)), [shelf, show]);

  /** Stays at the plot that is shown where the next one cannot be had. */
  const stay = useCallback(
    (missedId: string, message: string) => {
      if (wanted.current !== missedId) return;
      wanted.current = shown.current;
      window.history.replaceState(null, "", toAddress(shown.current));
      setFailure(message);
      setWaiting(false);
      const known = shelf.find(shown.current);
      if (known !== null) show(known);
    },
    [shelf, show, toAddress],
  );

  const open = useCallback(
    (sittingId: string) => {
      wanted.current = sittingId;
      setFailure(null);
      window.history.replaceState(null, "", toAddress(sittingId));
      const known = shelf.find(sittingId);
      if (known !== null) setView(known);
      setWaiting(known === null);
      // What is kept may be older than what another reviewer did: it is read again behind what is shown.
      const reading = known === null ? shelf.await(sittingId) : shelf.read(sittingId);
      reading
        .then(show)
        .catch((thrown: Error) => {
          if (known === null) stay(sittingId, thrown.message);
        })
        .finally(() => {
          if (wanted.current === sittingId) setWaiting(false);
        });
    },
    [shelf, show, stay, toAddress],
  );
  const go = useCallback(
    (step: 1 | -1) => {
      const to = queue[findInQueue(queue, wanted.current) + step];
      if (to !== undefined) open(to.sittingId);
    },
    [queue, open],
  );
  return { view, at, isWaiting, failure, go, open, put, reload };
}
