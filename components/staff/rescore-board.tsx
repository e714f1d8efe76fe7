"use client";

import { Button } from "@mantine/core";
import { useEffect } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import classes from "@/components/staff/rescore-board.module.css";
import { RescoreChanges } from "@/components/staff/rescore-changes";
import { toOlderWords } from "@/components/staff/to-older-words";
import { ConfirmButton } from "@/components/ui/confirm-button";
import { ErrorNote } from "@/components/ui/error-note";
import { useRefresh } from "@/components/ui/use-refresh";
import { When } from "@/components/ui/when";
import { type RescoreSummary, toSignedPoints } from "@/lib/plot/rescore";
import type { RescoreJob, RescoreView } from "@/lib/plot/rescore-view";

export interface RescoreBoardProps {
  view: RescoreView;
  start: () => Promise<ActionResult<{ rescoreId: string }>>;
  apply: (rescoreId: string) => Promise<ActionResult<{ changed: number }>>;
  discard: (rescoreId: string) => Promise<ActionResult>;
}

const REFRESH_MS = 1500;
const count = (results: number) => (results === 1 ? "1 result" : `${results} results`);

/** Reads the page again while the rescore is worked out. */
function useProgress(isWorking: boolean): void {
  const refresh = useRefresh();
  useEffect(() => {
    if (!isWorking) return;
    const timer = window.setInterval(() => refresh(), REFRESH_MS);
    return () => window.clearInterval(timer);
  }, [isWorking, refresh]);
}

function SummaryFacts({ summary }: { summary: RescoreSummary }) {
  const facts = [
    ["Points change", `${summary.changed} of ${summary.changed + summary.unchanged}`],
    ["Unchanged", String(summary.unchanged)],
    ["Up", String(summary.up)],
    ["Down", String(summary.down)],
    ["Mean change", toSignedPoints(summary.meanHundredths)],
    ["Largest change", toSignedPoints(summary.largestHundredths)],
  ] as const;
  return (
    <dl className={classes.facts}>
      {facts.map(([what, value]) => (
        <div key={what}>
          <dt>{what}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

interface PanelProps {
  job: RescoreJob;
  exerciseId: string;
  onApply: () => Promise<unknown>;
  onDiscard: () => Promise<unknown>;
}

function WorkingPanel({ job, onDiscard }: PanelProps) {
  return (
    <section className={classes.panel} aria-label="Being worked out">
      <h2>Being worked out</h2>
      <p role="status">
        {job.done} of {count(job.total)} scored anew. Nothing that anybody sees has changed. You can leave
        this page; it goes on, also after a restart of the server.
      </p>
      <progress className={classes.progress} max={Math.max(1, job.total)} value={job.done}>
        {job.done} of {job.total}
      </progress>
      <div className={classes.buttons}>
        <Button variant="outline" onClick={onDiscard}>
          Stop
        </Button>
      </div>
    </section>
  );
}

function ReadyPanel({ job, exerciseId, onApply, onDiscard }: PanelProps) {
  const released = job.rows.filter((row) => row.released).length;
  return (
    <>
      <section className={classes.panel} aria-label="What a rescore would change">
        <h2>What it would change</h2>
        {job.summary !== null && <SummaryFacts summary={job.summary} />}
        {job.failed > 0 && (
          <p>
            {count(job.failed)} could not be scored and would stay as they are; the server’s log says why.
          </p>
        )}
        <p className="muted">
          Worked out by {job.startedByName}, <When iso={job.startedAt} />. Nothing is changed until it is
          applied; then all of it changes at once.
        </p>
        <div className={classes.buttons}>
          <ConfirmButton
            variant="filled"
            question={`Rescore ${count(job.total - job.failed)}?`}
            detail={
              <p>
                {job.summary === null || job.summary.changed === 0
                  ? "No points change."
                  : `The points of ${count(job.summary.changed)} change.`}{" "}
                {released > 0 &&
                  `${count(released)} among them ${released === 1 ? "is" : "are"} released: those students see their new points at once. `}
                The earlier results are kept.
              </p>
            }
            confirmLabel="Rescore"
            onConfirm={onApply}
          >
            Apply the rescore
          </ConfirmButton>
          <Button variant="outline" onClick={onDiscard}>
            Leave the results as they are
          </Button>
        </div>
      </section>
      <RescoreChanges rows={job.rows} exerciseId={exerciseId} />
    </>
  );
}

function LastWords({ job }: { job: RescoreJob }) {
  if (job.state === "applied" && job.endedAt !== null) {
    return (
      <section className={classes.panel} aria-label="The last rescore">
        <h2>The last rescore</h2>
        <p>
          Applied by {job.endedByName}, <When iso={job.endedAt} />.
        </p>
        {job.summary !== null && <SummaryFacts summary={job.summary} />}
      </section>
    );
  }
  if (job.state === "discarded" && job.endedByName === null) {
    return <p>The last rescore was thrown away: a rubric, reference or stone was changed meanwhile.</p>;
  }
  return null;
}

/** What a rescore of an exercise would change, its progress, and the buttons that apply it or leave it. */
export function RescoreBoard({ view, start, apply, discard }: RescoreBoardProps) {
  const { job, older, exerciseId } = view;
  const refresh = useRefresh();
  const starting = useAction(start);
  const applying = useAction(apply);
  const discarding = useAction(discard);
  const isOpen = job !== null && !job.overtaken && (job.state === "working" || job.state === "ready");
  useProgress(isOpen && job.state === "working");
  const failure = starting.failure ?? applying.failure ?? discarding.failure;
  const words = toOlderWords(older);
  const act = async (run: () => Promise<unknown>) => {
    await run();
    refresh();
  };
  const panel = isOpen && {
    job,
    exerciseId,
    onApply: () => act(() => applying.run(job.rescoreId)),
    onDiscard: () => act(() => discarding.run(job.rescoreId)),
  };

  return (
    <div className={classes.root}>
      {failure !== null && <ErrorNote message={failure.message} kept="No result was changed." />}
      {panel !== false && job?.state === "working" && <WorkingPanel {...panel} />}
      {panel !== false && job?.state === "ready" && <ReadyPanel {...panel} />}
      {!isOpen && words !== null && (
        <section className={classes.panel} aria-label="Older results">
          <h2>Older results</h2>
          <p>
            {words} They stay as they are, and what is handed in from now on is scored by the newest. Working
            out lists what would change, student by student; it changes nothing yet.
          </p>
          <div className={classes.buttons}>
            <Button loading={starting.pending} onClick={() => act(() => starting.run())}>
              Work out what would change
            </Button>
          </div>
        </section>
      )}
      {!isOpen && words === null && <p>Every result is scored by the newest rubric and references.</p>}
      {!isOpen && job !== null && <LastWords job={job} />}
    </div>
  );
}
