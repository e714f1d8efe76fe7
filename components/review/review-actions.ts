import type { ActionResult } from "@/components/forms/action-result";
import type { TouchedExercise } from "@/lib/plot/rescore-view";
import type { ReviewView } from "@/lib/plot/review-view";

type Change = (input: unknown) => Promise<ActionResult<ReviewView>>;

/** What the desk may ask of the server; each answers with the review as it stands then. */
export interface ReviewActions {
  readonly overrule: Change;
  readonly undo: Change;
  readonly writeComment: Change;
  readonly deleteComment: Change;
  readonly acceptStray: (
    input: unknown,
  ) => Promise<ActionResult<{ version: number; touched: TouchedExercise[]; review: ReviewView }>>;
  readonly setReleased: (sittingId: string, isReleased: boolean) => Promise<ActionResult<ReviewView>>;
}
