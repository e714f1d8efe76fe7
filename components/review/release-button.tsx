"use client";

import { useAction } from "@/components/forms/use-action";
import { useReviewDesk } from "@/components/review/review-desk-context";
import { ConfirmButton } from "@/components/ui/confirm-button";
import { ErrorNote } from "@/components/ui/error-note";

/** Releases the debrief that is shown, or takes it back. */
export function ReleaseButton() {
  const { view, actions, put } = useReviewDesk();
  const { run, failure } = useAction(actions.setReleased);
  const isReleased = view.state === "released";
  const act = async () => {
    const done = await run(view.debrief.sittingId, !isReleased);
    if (done !== null) put(done.value);
  };
  return (
    <>
      {failure !== null && <ErrorNote message={failure.message} kept="Nothing was changed." />}
      {isReleased ? (
        <ConfirmButton
          question="Take this debrief back?"
          detail={
            <p>The student can no longer open it. If they have read it, they have seen the reference.</p>
          }
          confirmLabel="Take back"
          onConfirm={act}
        >
          Take release back
        </ConfirmButton>
      ) : (
        <ConfirmButton
          question="Release this debrief?"
          detail={
            <p>
              The student can read it at once: the reference, what they found, their points, and what you
              overruled and wrote. It can be taken back.
            </p>
          }
          confirmLabel="Release"
          onConfirm={act}
        >
          Release
        </ConfirmButton>
      )}
    </>
  );
}
