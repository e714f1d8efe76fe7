"use client";

import { Select, TextInput } from "@mantine/core";
import { Search } from "lucide-react";
import { useRouter } from "next/navigation";
import { useEffect, useMemo, useState } from "react";
import { QUEUE_WAYS, type QueueWay } from "@/components/review/list-queue";
import { type QueueTerms, toQueueQuery } from "@/components/review/queue-address";
import { takeReviewed } from "@/components/review/reviewed-flag";
import {
  arrangeRows,
  GRID_ORDERS,
  type GridOrder,
  type GridRow,
  getMeanTotal,
  listGridRows,
} from "@/components/staff/arrange-grid";
import { type ReleaseActions, ReleaseBar } from "@/components/staff/release-bar";
import { OutcomeSign, ReviewCellView } from "@/components/staff/review-cell-view";
import classes from "@/components/staff/review-grid.module.css";
import { CELL_STATE_WORDS } from "@/components/ui/state-words";
import { StatusBadge } from "@/components/ui/status-badge";
import { When } from "@/components/ui/when";
import { CELL_STATES, type ReviewGrid as Grid } from "@/lib/plot/staff-view";

export interface ReviewGridProps extends ReleaseActions {
  grid: Grid;
  /** Filter and order, as the address has them. */
  initialTerms: QueueTerms;
}

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
  const [terms, setTerms] = useState(initialTerms);
  const { search, order, way } = terms;
  const query = toQueueQuery(terms);
  const change = (next: Partial<QueueTerms>) => {
    const now = { ...terms, ...next };
    setTerms(now);
    window.history.replaceState(null, "", `${window.location.pathname}${toQueueQuery(now)}`);
  };
  const [selected, setSelected] = useState<ReadonlySet<string>>(new Set());
  const shown = useMemo(() => arrangeRows(rows, search, order), [rows, search, order]);
  useReviewedRefresh();
  useScoringRefresh(grid.cells.some(({ state }) => state === "scoring"));
  const select = (sittingId: string, on: boolean) =>
    setSelected((before) => {
      const next = new Set(before);
      if (on) next.add(sittingId);
      else next.delete(sittingId);
      return next;
    });
  const labels = new Map(grid.stones.map(({ exerciseStoneId, label }) => [exerciseStoneId, label]));

  return (
    <section aria-label="Students by stones" className={classes.root}>
      <ReleaseBar
        cells={grid.cells}
        selected={selected}
        onClear={() => setSelected(new Set())}
        release={release}
        withdraw={withdraw}
      />
      <div className={classes.tools}>
        <TextInput
          aria-label="Search students"
          placeholder="Search students"
          leftSection={<Search size={15} aria-hidden="true" />}
          value={search}
          onChange={(event) => change({ search: event.currentTarget.value })}
        />
        <Select
          aria-label="Order of students"
          data={GRID_ORDERS.map((value) => ({ value, label: ORDER_LABELS[value] }))}
          value={order}
          allowDeselect={false}
          onChange={(value) => change({ order: GRID_ORDERS.find((one) => one === value) ?? "name" })}
        />
        <Select
          aria-label="What comes next in a review"
          data={QUEUE_WAYS.map((value) => ({ value, label: WAY_LABELS[value] }))}
          value={way}
          allowDeselect={false}
          onChange={(value) => change({ way: QUEUE_WAYS.find((one) => one === value) ?? "stone" })}
        />
        <Legend rows={rows} />
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a wide grid must scroll from the keyboard */}
      <section className={classes.scroll} tabIndex={0} aria-label="Review grid, scrolls sideways">
        <table className={classes.table}>
          <GridHead grid={grid} />
          <tbody>
            {shown.map((row) => (
              <tr key={row.studentId}>
                <th scope="row" className={classes.corner}>
                  {row.name}
                </th>
                {row.cells.map((cell) => (
                  <ReviewCellView
                    key={cell.exerciseStoneId}
                    cell={cell}
                    exerciseId={grid.exercise.exerciseId}
                    query={query}
                    studentName={row.name}
                    stoneLabel={labels.get(cell.exerciseStoneId) ?? ""}
                    isSelected={cell.sittingId !== null && selected.has(cell.sittingId)}
                    onSelect={select}
                  />
                ))}
                <td className={classes.meanCell}>{toMeanText(row.mean)}</td>
              </tr>
            ))}
          </tbody>
          <GridFoot grid={grid} rows={shown} />
        </table>
        {shown.length === 0 && <p className={classes.none}>No student matches “{search}”.</p>}
      </section>
    </section>
  );
}
