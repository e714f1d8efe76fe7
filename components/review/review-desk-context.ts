"use client";

import { createContext, useContext } from "react";
import type { CalloutWords } from "@/components/debrief/to-callout-words";
import type { ReviewActions } from "@/components/review/review-actions";
import type { ReviewView } from "@/lib/plot/review-view";

export interface ReviewDeskTerms {
  readonly view: ReviewView;
  readonly actions: ReviewActions;
  readonly say: CalloutWords;
  /** Shows what the server answered. */
  readonly put: (view: ReviewView) => void;
  /** Reads the review again, after a refusal: what others did meanwhile is then in sight. */
  readonly reload: () => Promise<void>;
  /** What is typed and not sent, by sitting and field; kept while one goes on and comes back. */
  readonly drafts: Map<string, string>;
}

const DeskContext = createContext<ReviewDeskTerms | null>(null);
export const ReviewDeskProvider = DeskContext.Provider;

/** The desk that this stands on. Throws outside of one. */
export function useReviewDesk(): ReviewDeskTerms {
  const terms = useContext(DeskContext);
  if (terms === null) throw new Error("not on a review desk");
  return terms;
}
