"use client";

import { useEffect, useMemo, useState } from "react";
import { loadPlotCanvas } from "@/components/plot-editor/use-plot-canvas";
import { listQueue } from "@/components/review/list-queue";
import { type QueueTerms, toQueueQuery } from "@/components/review/queue-address";
import { arrangeRows, listGridRows } from "@/components/staff/arrange-grid";
import { type ReleaseActions, ReleaseBar } from "@/components/staff/release-bar";
import classes from "@/components/staff/review-grid.module.css";
import { ReviewGridTable } from "@/components/staff/review-grid-table";
import { ReviewGridTools } from "@/components/staff/review-grid-tools";
import { useReviewedRefresh, useScoringRefresh } from "@/components/staff/use-grid-refresh";
import type { ReviewGrid as Grid } from "@/lib/plot/staff-view";

export interface ReviewGridProps extends ReleaseActions {
  grid: Grid;
  /** Filter and order, as the address has them. */
  initialTerms: QueueTerms;
}

/** Filter, order and way of going on; the address follows them. */
function useTerms(initialTerms: QueueTerms) {
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
    void loadPlotCanvas().catch(() => undefined);
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
