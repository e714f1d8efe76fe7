"use client";

import { useEffect, useMemo, useState } from "react";
import { listQueue } from "@/components/review/list-queue";
import { type QueueTerms, toQueueQuery } from "@/components/review/queue-address";
import { arrangeRows, listGridRows } from "@/components/staff/arrange-grid";
import { type ReleaseActions, ReleaseBar } from "@/components/staff/release-bar";
import classes from "@/components/staff/review-grid.module.css";

<<<<<<< HEAD

import { CELL_STATE_WORDS } from "@/components/ui/state-words";
import { StatusBadge } from "@/components/ui/status-badge";
import { When } from "@/components/ui/when";
import { CELL_STATES, type ReviewGrid as Grid } from "@/lib/plot/staff-view";

=======

import { ReviewGridTable } from "@/components/staff/review-grid-table";
import { ReviewGridTools } from "@/components/staff/review-grid-tools";
import { useReviewedRefresh, useScoringRefresh } from "@/components/staff/use-grid-refresh";
import type { ReviewGrid as Grid } from "@/lib/plot/staff-view";

>>>>>>> 659a51a (Show the next plot at once, whatever its stone: trace the tolerance only when it is looked at, keep the canvases, and fetch a cell's page while it is pointed at)

export interface ReviewGridProps extends ReleaseActions {
  grid: Grid;
  /** Filter and order, as the address has them. */
  initialTerms: QueueTerms;
}

<<<<<<< HEAD
const WAY_LABELS: Readonly<Record<QueueWay, string>> = {
  stone: "Next: same stone",
  student: "Next: same student",
};

const ORDER_LABELS: Readonly<Record<GridOrder, string>> = {
  name: "Name",
  "mean-up": "Mean points, lowest first",
  "mean-down": "Mean points, highest first",
  open: "Most to release first",
};

const REFRESH_MS = 3000;

/** Reads the grid again where it is shown after a review that may have changed it. */
function useReviewedRefresh(): void {
  const router = useRouter();
  useEffect(() => {
    if (takeReviewed()) router.refresh();
  }, [router]);
}

/** Reads the grid again every few seconds while something is still being scored. */
function useScoringRefresh(isScoring: boolean): void {
  const router = useRouter();
  useEffect(() => {
    if (!isScoring) return;
    const timer = window.setInterval(() => router.refresh(), REFRESH_MS);
    return () => window.clearInterval(timer);
  }, [isScoring, router]);
}

function Legend({ rows }: { rows: readonly GridRow[] }) {
  const cells = rows.flatMap((row) => row.cells);
  return (
    <div className={classes.legend}>
      <ul className={classes.states} aria-label="How far the work is">
        {CELL_STATES.map((state) => {
          const count = cells.filter((cell) => cell.state === state).length;
          if (count === 0) return null;
          const { tone, words } = CELL_STATE_WORDS[state];
          return (
            <li key={state}>
              <StatusBadge tone={tone}>
                {words} <strong>{count}</strong>
              </StatusBadge>
            </li>
          );
        })}
      </ul>
      <ul className={classes.states} aria-label="Signs in a cell">
        {(["found", "overlooked", "stray"] as const).map((outcome) => (
          <li key={outcome} className={classes.outcomeKey}>
            <OutcomeSign outcome={outcome} /> {outcome === "stray" ? "strays" : outcome}
          </li>
        ))}
      </ul>
    </div>
  );
}

function toMeanText(mean: number | null): string {
  return mean === null ? "–" : mean.toFixed(1);
}

function GridHead({ grid }: { grid: Grid }) {
  return (
    <thead>
      <tr>
        <th scope="col" className={classes.corner}>
          Student
        </th>
        {grid.stones.map(({ exerciseStoneId, label, clarity, opensAt, isBlind }) => (
          <th key={exerciseStoneId} scope="col">
            {label}
            <span className={classes.small}>
              {isBlind ? "you read it blind" : (clarity ?? "no reference")}
            </span>
            {opensAt !== null && (
              <span className={classes.small}>
                opens <When iso={opensAt} />
              </span>
            )}
          </th>
        ))}
        <th scope="col" className={classes.meanHead}>
          Mean
        </th>
      </tr>
    </thead>
  );
}

function GridFoot({ grid, rows }: { grid: Grid; rows: readonly GridRow[] }) {
  return (
    <tfoot>
      <tr>
        <th scope="row" className={classes.corner}>
          Mean points
        </th>
        {grid.stones.map(({ exerciseStoneId }) => (
          <td key={exerciseStoneId}>
            {toMeanText(
              getMeanTotal(
                rows.flatMap(({ cells }) => cells.filter((cell) => cell.exerciseStoneId === exerciseStoneId)),
              ),
            )}
          </td>
        ))}
        <td>{toMeanText(getMeanTotal(rows.flatMap(({ cells }) => cells)))}</td>
      </tr>
    </tfoot>
  );
}

/** Students by stones: where each piece of work stands and how it did. Releases debriefs, one, some or all. */
export function ReviewGrid({ grid, initialTerms, release, withdraw }: ReviewGridProps) {
  const rows = useMemo(() => listGridRows(grid), [grid]);
=======
/** Filter, order and way of going on; the address follows them. */
function useTerms(initialTerms: QueueTerms) {
>>>>>>> 659a51a (Show the next plot at once, whatever its stone: trace the tolerance only when it is looked at, keep the canvases, and fetch a cell's page while it is pointed at)
  const [terms, setTerms] = useState(initialTerms);
  const change = (next: Partial<QueueTerms>) => {
    const now = { ...terms, ...next };
    setTerms(now);
    window.history.replaceState(null, "", `${window.location.pathname}${toQueueQuery(now)}`);
  };
  return { terms, change };
}

function useSelection() {
  const [selected, setSelected] = useState<ReadonlySet<string>>(new Set());
  const select = (sittingId: string, on: boolean) =>
    setSelected((before) => {
      const next = new Set(before);
      if (on) next.add(sittingId);
      else next.delete(sittingId);
      return next;
    });
  return { selected, select, clear: () => setSelected(new Set()) };
}

/** What a review is likely to begin with, as the page was opened; typing in the search fetches nothing. */
function useFirst(grid: Grid, { search, order, way }: QueueTerms): string | null {
  return useMemo(() => listQueue(grid, search, order, way)[0]?.sittingId ?? null, [grid, search, order, way]);
}

/** Has the code of the diagram at hand before the first plot is opened. */
function useDiagramCode(): void {
  useEffect(() => {
    void import("@/components/plot-editor/plot-canvas-host").catch(() => undefined);
  }, []);
}

/** Students by stones: where each piece of work stands and how it did. Releases debriefs, one, some or all. */
export function ReviewGrid({ grid, initialTerms, release, withdraw }: ReviewGridProps) {
  const rows = useMemo(() => listGridRows(grid), [grid]);
  const { terms, change } = useTerms(initialTerms);
  const { search, order } = terms;
  const { selected, select, clear } = useSelection();
  const shown = useMemo(() => arrangeRows(rows, search, order), [rows, search, order]);
  const first = useFirst(grid, initialTerms);
  useDiagramCode();
  useReviewedRefresh();
  useScoringRefresh(grid.cells.some(({ state }) => state === "scoring"));

  return (
    <section aria-label="Students by stones" className={classes.root}>
      <ReleaseBar
        cells={grid.cells}
        selected={selected}
        onClear={clear}
        release={release}
        withdraw={withdraw}
      />
      <ReviewGridTools rows={rows} terms={terms} onChange={change} />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a wide grid must scroll from the keyboard */}
      <section className={classes.scroll} tabIndex={0} aria-label="Review grid, scrolls sideways">
        <ReviewGridTable
          grid={grid}
          rows={shown}
          query={toQueueQuery(terms)}
          firstId={terms === initialTerms ? first : null}
          selected={selected}
          onSelect={select}
        />
        {shown.length === 0 && <p className={classes.none}>No student matches “{search}”.</p>}
      </section>
    </section>
  );
}
