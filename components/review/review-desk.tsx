"use client";

/**
 * The review of one hand-in after another: the debrief with the tools to overrule it and to comment on it. The next plot is
 * fetched before it is asked for and put in place of the shown one, so that N shows it at once.
 */
import { Button, Tooltip } from "@mantine/core";
import { useCallback, useDeferredValue, useEffect, useMemo, useRef } from "react";
import { Debrief } from "@/components/debrief/debrief";
import { createDebriefWords } from "@/components/debrief/debrief-row";
import type { DebriefTools } from "@/components/debrief/debrief-tools";
import { Attempts } from "@/components/review/attempts";
import type { QueueItem } from "@/components/review/list-queue";
import { ReleaseButton } from "@/components/review/release-button";
import classes from "@/components/review/review.module.css";
import type { ReviewActions } from "@/components/review/review-actions";
import { ReviewDeskProvider } from "@/components/review/review-desk-context";
import { ReviewPanel } from "@/components/review/review-panel";
import { GradeTool, RowTools } from "@/components/review/row-tools";
import { type ReviewQueue, useReviewQueue } from "@/components/review/use-review-queue";
import { useStepKeys } from "@/components/review/use-step-keys";
import { PlotDistance } from "@/components/staff/plot-distance";
import { ErrorNote } from "@/components/ui/error-note";
import type { ReviewView } from "@/lib/plot/review-view";

export interface ReviewDeskProps {
  initial: ReviewView;
  /** In the order and with the filter of the grid. */
  queue: readonly QueueItem[];
  exerciseHref: string;
  exerciseTitle: string;
  /** The filter and order of the grid, as its address has them. */
  query: string;
  actions: ReviewActions;
}

function StepButton({ step, to, onGo }: { step: 1 | -1; to: QueueItem | undefined; onGo: () => void }) {
  const [word, key] = step === 1 ? ["Next", "N"] : ["Previous", "P"];
  const label = to === undefined ? `${word}: none` : `${word}: ${to.studentName}, ${to.stoneLabel}`;
  return (
    <Tooltip label={`${label}. Key ${key}.`}>
      <Button
        variant={step === 1 ? "filled" : "outline"}
        aria-label={label}
        aria-keyshortcuts={key}
        // Not disabled at the end: the focus would be lost.
        aria-disabled={to === undefined}
        {...(to === undefined ? { "data-disabled": true } : {})}
        onClick={onGo}
      >
        {word}
        <span className={classes.key} aria-hidden="true">
          {key}
        </span>
      </Button>
    </Tooltip>
  );
}

function Steps({ queue, items }: { queue: ReviewQueue; items: readonly QueueItem[] }) {
  const { at, go } = queue;
  return (
    <span className={classes.steps}>
      <StepButton step={-1} to={items[at - 1]} onGo={() => go(-1)} />
      <span className={classes.place}>
        {at < 0 ? "–" : at + 1} of {items.length}
      </span>
      <StepButton step={1} to={items[at + 1]} onGo={() => go(1)} />
    </span>
  );
}

/** Puts the focus on the page's heading where what had it is gone. */
function useHeldFocus(sittingId: string): void {
  const first = useRef(sittingId);
  useEffect(() => {
    if (first.current === sittingId) return;
    first.current = sittingId;
    if (document.activeElement !== null && document.activeElement !== document.body) return;
    const heading = document.querySelector("h1");
    heading?.setAttribute("tabindex", "-1");
    heading?.focus({ preventScroll: true });
  }, [sittingId]);
}

export function ReviewDesk(props: ReviewDeskProps) {
  const { initial, queue: items, exerciseHref, exerciseTitle, query, actions } = props;
  const toAddress = useCallback(
    (sittingId: string) => `${exerciseHref}/sittings/${sittingId}${query}`,
    [exerciseHref, query],
  );
  const queue = useReviewQueue(initial, items, toAddress);
  const { view, put, reload } = queue;
  const drafts = useRef(new Map<string, string>()).current;
  const { debrief } = view;
  const { sittingId, studentName, stone } = debrief;
  useStepKeys(queue.go);
  useHeldFocus(sittingId);
  const later = useDeferredValue(debrief);
  const say = useMemo(() => createDebriefWords(debrief), [debrief]);
  const desk = useMemo(
    () => ({ view, actions, say, put, reload, drafts }),
    [view, actions, say, put, reload, drafts],
  );
  const tools = useMemo(
    (): DebriefTools => ({
      renderNotes: (row) => <RowTools key={`${sittingId} ${row.key}`} row={row} />,
      renderGradeTool: (property) => <GradeTool key={`${sittingId} ${property}`} property={property} />,
      panel: <ReviewPanel key={sittingId} />,
    }),
    [sittingId],
  );
  const trail = [
    { href: "/exercises", label: "Exercises" },
    { href: `${exerciseHref}${query}`, label: exerciseTitle },
  ];
  return (
    <ReviewDeskProvider value={desk}>
      <p role="status" className="visually-hidden">
        {queue.isWaiting ? "The next plot is on its way." : `${studentName}, ${stone.label}`}
      </p>
      <Debrief
        view={debrief}
        trail={trail}
        isOwn={false}
        review={tools}
        note={
          <>
            {queue.failure !== null && (
              <ErrorNote message={queue.failure} next="The plot that was shown is still here." />
            )}
            <Attempts view={view} toAddress={toAddress} onOpen={queue.open} />
          </>
        }
        actions={
          <>
            <Steps queue={queue} items={items} />
            <ReleaseButton key={sittingId} />
          </>
        }
      />
      <div className="page-wide" data-shown={sittingId}>
        <PlotDistance view={later} />
      </div>
    </ReviewDeskProvider>
  );
}
