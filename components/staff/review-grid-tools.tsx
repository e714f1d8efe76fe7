"use client";

import { Select, TextInput } from "@mantine/core";
import { Search } from "lucide-react";
import { QUEUE_WAYS, type QueueWay } from "@/components/review/list-queue";
import type { QueueTerms } from "@/components/review/queue-address";
import { GRID_ORDERS, type GridOrder, type GridRow } from "@/components/staff/arrange-grid";
import { OutcomeSign } from "@/components/staff/review-cell-view";
import classes from "@/components/staff/review-grid.module.css";
import { CELL_STATE_WORDS } from "@/components/ui/state-words";
import { StatusBadge } from "@/components/ui/status-badge";
import { CELL_STATES } from "@/lib/plot/staff-view";

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

interface ReviewGridToolsProps {
  rows: readonly GridRow[];
  terms: QueueTerms;
  onChange: (next: Partial<QueueTerms>) => void;
}

/** Search, order, what comes next in a review, and what the signs say. */
export function ReviewGridTools({ rows, terms, onChange }: ReviewGridToolsProps) {
  const { search, order, way } = terms;
  return (
    <div className={classes.tools}>
      <TextInput
        aria-label="Search students"
        placeholder="Search students"
        leftSection={<Search size={15} aria-hidden="true" />}
        value={search}
        onChange={(event) => onChange({ search: event.currentTarget.value })}
      />
      <Select
        aria-label="Order of students"
        data={GRID_ORDERS.map((value) => ({ value, label: ORDER_LABELS[value] }))}
        value={order}
        allowDeselect={false}
        onChange={(value) => onChange({ order: GRID_ORDERS.find((one) => one === value) ?? "name" })}
      />
      <Select
        aria-label="What comes next in a review"
        data={QUEUE_WAYS.map((value) => ({ value, label: WAY_LABELS[value] }))}
        value={way}
        allowDeselect={false}
        onChange={(value) => onChange({ way: QUEUE_WAYS.find((one) => one === value) ?? "stone" })}
      />
      <Legend rows={rows} />
    </div>
  );
}
