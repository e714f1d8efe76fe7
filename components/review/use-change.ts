"use client";

import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import { useReviewDesk } from "@/components/review/review-desk-context";
import type { ReviewView } from "@/lib/plot/review-view";

/** Makes a change of the shown review from the revision that is in sight; a refusal reads it again. */
export function useChange(change: (input: unknown) => Promise<ActionResult<ReviewView>>) {
  const { view, put, reload } = useReviewDesk();
  const { run, pending, failure } = useAction(change);
  const send = async (input: object): Promise<boolean> => {
    const { sittingId } = view.debrief;
    const done = await run({ sittingId, baseRevision: view.revision, ...input });
    if (done === null) await reload().catch(() => undefined);
    else put(done.value);
    return done !== null;
  };
  return { send, pending, failure };
}
