/** The reviews that were read from the server, some of them before they are asked for. No React. */
import type { ReviewView } from "@/lib/plot/review-view";

/** What was read longer ago than this is read anew before it is shown. */
const FRESH_MS = 5 * 60_000;

interface Kept {
  readonly view: ReviewView;
  readonly atMs: number;
  /** When it was asked for, among all that was asked for and kept. */
  readonly turn: number;
}

export interface ReviewShelf {
  /** What can be shown at once; null where it must be read first. */
  readonly find: (sittingId: string) => ReviewView | null;
  /** Keeps what the server answered to a change: what was asked for before is older than that. */
  readonly keep: (view: ReviewView) => void;
  /** Asks the server, and gives the newest that is known by then. Throws what `fetchReview` does. */
  readonly read: (sittingId: string) => Promise<ReviewView>;
  /** What is under way already, else as `read`; for one that nothing is known of. */
  readonly await: (sittingId: string) => Promise<ReviewView>;
}

/** An empty shelf. */
export function createReviewShelf(
  fetchReview: (sittingId: string) => Promise<ReviewView>,
  nowMs: () => number = Date.now,
): ReviewShelf {
  const kept = new Map<string, Kept>();
  const underWay = new Map<string, Promise<ReviewView>>();
  let turns = 0;

  const take = (view: ReviewView, turn: number): ReviewView => {
    const { sittingId } = view.debrief;
    const known = kept.get(sittingId);
    const isOlder = known !== undefined && (known.turn > turn || known.view.revision > view.revision);
    if (isOlder) return known.view;
    kept.set(sittingId, { view, atMs: nowMs(), turn });
    return view;
  };
  const takeTurn = () => {
    turns += 1;
    return turns;
  };
  const read = (sittingId: string) => {
    const turn = takeTurn();
    const reading = fetchReview(sittingId)
      .then((view) => take(view, turn))
      .finally(() => {
        if (underWay.get(sittingId) === reading) underWay.delete(sittingId);
      });
    underWay.set(sittingId, reading);
    return reading;
  };
  return {
    find: (sittingId) => {
      const known = kept.get(sittingId);
      return known !== undefined && nowMs() - known.atMs < FRESH_MS ? known.view : null;
    },
    keep: (view) => void take(view, takeTurn()),
    read,
    await: (sittingId) => underWay.get(sittingId) ?? read(sittingId),
  };
}
