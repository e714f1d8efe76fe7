"use client";

import classes from "@/components/review/review.module.css";
import { CELL_STATE_WORDS } from "@/components/ui/state-words";
import type { ReviewView } from "@/lib/plot/review-view";

interface AttemptsProps {
  view: ReviewView;
  toAddress: (sittingId: string) => string;
  onOpen: (sittingId: string) => void;
}

/** The attempts of this student in this place, where there is more than one. Each is reviewed and released by itself. */
export function Attempts({ view, toAddress, onOpen }: AttemptsProps) {
  const { attempts, debrief } = view;
  if (attempts.length < 2) return null;
  const last = attempts.at(-1);
  return (
    <nav className={classes.attempts} aria-label="Attempts">
      <ol>
        {attempts.map(({ sittingId, label, state, points }, index) => {
          const facts = [
            ...(label === debrief.stone.label ? [] : [`on ${label}`]),
            CELL_STATE_WORDS[state].words,
            ...(points === null ? [] : [`${points.toFixed(1)} points`]),
            ...(sittingId === last?.sittingId ? ["counts"] : []),
          ];
          const words = (
            <>
              <strong>Attempt {index + 1}</strong> {facts.join(" · ")}
            </>
          );
          const isHere = state === "scored" || state === "released";
          return (
            <li key={sittingId}>
              {sittingId === debrief.sittingId ? (
                <span aria-current="true">{words}</span>
              ) : (
                <a
                  href={toAddress(sittingId)}
                  onClick={(event) => {
                    if (!isHere || event.ctrlKey || event.metaKey || event.shiftKey) return;
                    event.preventDefault();
                    onOpen(sittingId);
                  }}
                >
                  {words}
                </a>
              )}
            </li>
          );
        })}
      </ol>
    </nav>
  );
}
