"use client";

/** The review that is shown: put in place at once where it is known, and read again behind what is shown. */
import { type RefObject, useCallback, useEffect, useRef, useState } from "react";
import type { ReviewShelf } from "@/components/review/review-shelf";
import { noteReviewed } from "@/components/review/reviewed-flag";
import type { ReviewView } from "@/lib/plot/review-view";

/** So long after the page is there it is looked at again. */
const SETTLE_MS = 60;

export interface ShownReview {
  readonly view: ReviewView;
  /** The sitting that was asked for last; it may still be on its way. */
  readonly wanted: RefObject<string>;
  readonly isWaiting: boolean;
  readonly failure: string | null;
  /** Shows another sitting. */
  readonly open: (sittingId: string) => void;
  /** Shows a review as the server answered it. */
  readonly put: (view: ReviewView) => void;
  /** Reads the shown review again. */
  readonly reload: () => Promise<void>;
}

/** The same again is nothing to draw again. */
const unlessSame = (next: ReviewView) => (shown: ReviewView) =>
  shown.debrief.sittingId === next.debrief.sittingId && JSON.stringify(shown) === JSON.stringify(next)
    ? shown
    : next;

/** What is on the screen, and how what was asked for gets there. */
function useView(initial: ReviewView) {
  const [view, setView] = useState(initial);
  const wanted = useRef(initial.debrief.sittingId);
  const shown = useRef(initial.debrief.sittingId);
  shown.current = view.debrief.sittingId;
  const show = useCallback((next: ReviewView) => {
    noteReviewed();
    if (next.debrief.sittingId === wanted.current) setView(unlessSame(next));
  }, []);
  return { view, wanted, shown, show };
}

/** The page may have been fetched a while before it was opened. */
function useSecondLook(
  shelf: ReviewShelf,
  wanted: RefObject<string>,
  show: (view: ReviewView) => void,
): void {
  useEffect(() => {
    const look = () => shelf.read(wanted.current).then(show, () => undefined);
    const timer = window.setTimeout(look, SETTLE_MS);
    return () => window.clearTimeout(timer);
  }, [shelf, wanted, show]);
}

export function useShownReview(
  initial: ReviewView,
  shelf: ReviewShelf,
  toAddress: (sittingId: string) => string,
): ShownReview {
  const { view, wanted, shown, show } = useView(initial);
  const [isWaiting, setWaiting] = useState(false);
  const [failure, setFailure] = useState<string | null>(null);
  useSecondLook(shelf, wanted, show);

  const turnTo = useCallback(
    (sittingId: string, message: string | null) => {
      wanted.current = sittingId;
      window.history.replaceState(null, "", toAddress(sittingId));
      setFailure(message);
      const known = shelf.find(sittingId);
      if (known !== null) show(known);
      setWaiting(known === null && message === null);
      return known;
    },
    [shelf, wanted, show, toAddress],
  );
  const open = useCallback(
    (sittingId: string) => {
      const isKnown = turnTo(sittingId, null) !== null;
      // What is kept may be older than what another reviewer did: it is read again behind what is shown.
      const reading = isKnown ? shelf.read(sittingId) : shelf.await(sittingId);
      reading
        .then(show)
        .catch((thrown: Error) => {
          // Where the next one cannot be had, one stays at the plot that is shown.
          if (!isKnown && wanted.current === sittingId) turnTo(shown.current, thrown.message);
        })
        .finally(() => {
          if (wanted.current === sittingId) setWaiting(false);
        });
    },
    [shelf, wanted, shown, show, turnTo],
  );
  const put = useCallback(
    (next: ReviewView) => {
      shelf.keep(next);
      show(next);
    },
    [shelf, show],
  );
  const reload = useCallback(async () => show(await shelf.read(wanted.current)), [shelf, wanted, show]);
  return { view, wanted, isWaiting, failure, open, put, reload };
}
