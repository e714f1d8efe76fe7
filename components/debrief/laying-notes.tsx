"use client";

import { findOtherFit, toFitWords, toLayingWords } from "@/components/debrief/other-fit";
import { WouldFitNote } from "@/components/debrief/would-fit-note";
import type { DebriefView } from "@/lib/plot/student-view";

interface LayingNotesProps {
  view: DebriefView;
  isOwn: boolean;
  isRelaid: boolean;
  onRelaid: (isRelaid: boolean) => void;
}

/** How the plot is laid on the reference, where that is not as it was drawn, or where it would fit better. */
export function LayingNotes({ view, isOwn, isRelaid, onRelaid }: LayingNotesProps) {
  const { turnDeg } = view.result.alignment;
  const fit = findOtherFit(view);
  return (
    <>
      {fit !== null && (
        <WouldFitNote
          fit={fit}
          how={toFitWords(fit, view)}
          isOwn={isOwn}
          isShown={isRelaid}
          onShow={onRelaid}
        />
      )}
      {turnDeg !== 0 && !isRelaid && (
        <p className="muted">
          The plot is shown {toLayingWords({ turnDeg, mirrored: false })}: that is how it fits the reference,
          and a stone held turned costs nothing in this exercise.
        </p>
      )}
    </>
  );
}
