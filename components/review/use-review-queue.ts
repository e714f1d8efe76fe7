"use client";

/** One review after another, the ones beside the shown one read before they are asked for. */
import { useCallback, useEffect, useState } from "react";
import { fetchReview } from "@/components/review/fetch-review";
import { findInQueue, type QueueItem } from "@/components/review/list-queue";
import { createReviewShelf, type ReviewShelf } from "@/components/review/review-shelf";
import { type ShownReview, useShownReview } from "@/components/review/use-shown-review";
import { getSolid } from "@/lib/gem/build-solid";
import { drawView } from "@/lib/gem/draw-view";
import { VIEWS } from "@/lib/gem/point";
import type { ReviewView } from "@/lib/plot/review-view";

/** So long after a plot is shown, its neighbours are read. */
const SETTLE_MS = 60;

export interface ReviewQueue extends Omit<ShownReview, "wanted"> {
  /** Place in the queue, from 0; -1 for a plot that the filter leaves out. */
  readonly at: number;
  /** Shows the next plot of the queue, or the one before. */
  readonly go: (step: 1 | -1) => void;
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

export function useReviewQueue(
  initial: ReviewView,
  queue: readonly QueueItem[],
  toAddress: (sittingId: string) => string,
): ReviewQueue {
  const [shelf] = useState(() => {
    const empty = createReviewShelf(fetchReview);
    empty.keep(initial);
    return empty;
  });
  const { wanted, ...shown } = useShownReview(initial, shelf, toAddress);
  const at = findInQueue(queue, shown.view.debrief.sittingId);
  useNeighbours(shelf, queue, at);
  const { open } = shown;
  const go = useCallback(
    (step: 1 | -1) => {
      const to = queue[findInQueue(queue, wanted.current) + step];
      if (to !== undefined) open(to.sittingId);
    },
    [queue, wanted, open],
  );
  return { ...shown, at, go };
}
