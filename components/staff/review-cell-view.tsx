"use client";

import { Checkbox } from "@mantine/core";
import Link from "next/link";
import type { CSSProperties } from "react";
import { countStrays, toBiasWords, toCellWords, toReviewWords } from "@/components/staff/arrange-grid";
import classes from "@/components/staff/review-grid.module.css";
import { EagerLink } from "@/components/ui/eager-link";
import { CELL_STATE_WORDS } from "@/components/ui/state-words";
import { StatusBadge } from "@/components/ui/status-badge";
import { DEFAULT_NOTATION, type MarkStyleName } from "@/lib/plot/notation";
import type { ReviewCell } from "@/lib/plot/staff-view";

const toInks = (outcome: MarkStyleName) =>
  ({
    "--ink-light": DEFAULT_NOTATION[outcome].inks.light,
    "--ink-dark": DEFAULT_NOTATION[outcome].inks.dark,
  }) as CSSProperties;

/** The signs of found, overlooked and stray, in the forms that the debrief's callouts have. */
export function OutcomeSign({ outcome }: { outcome: "found" | "overlooked" | "stray" }) {
  return (
    <svg
      width="12"
      height="12"
      viewBox="0 0 12 12"
      className={classes.outcomeSign}
      style={toInks(outcome)}
      aria-hidden="true"
    >
      {outcome === "found" && <circle cx="6" cy="6" r="4.5" fill="currentColor" />}
      {outcome === "overlooked" && (
        <path d="M6 0.8L11.2 6 6 11.2 0.8 6z" fill="none" stroke="currentColor" strokeWidth="1.6" />
      )}
      {outcome === "stray" && (
        <path d="M6 1l5.2 9.4H0.8z" fill="none" stroke="currentColor" strokeWidth="1.6" />
      )}
    </svg>
  );
}

function Outcomes({ cell }: { cell: ReviewCell }) {
  return (
    <span className={classes.outcomes}>
      <span>
        <OutcomeSign outcome="found" />
        {cell.found}
      </span>
      <span>
        <OutcomeSign outcome="overlooked" />
        {cell.overlooked}
      </span>
      <span>
        <OutcomeSign outcome="stray" />
        {countStrays(cell)}
      </span>
    </span>
  );
}

function CellContent({ cell }: { cell: ReviewCell }) {
  const { tone, words } = CELL_STATE_WORDS[cell.state];
  const bias = toBiasWords(cell.clarityBias);
  return (
    <>
      <span className={classes.stateLine}>
        {cell.total !== null && <span className={classes.total}>{cell.total.toFixed(1)}</span>}
        <StatusBadge tone={tone}>{words}</StatusBadge>
      </span>
      {cell.total !== null && <Outcomes cell={cell} />}
      {cell.state === "on-the-bench" && (
        <span className={classes.small}>{cell.markCount === 1 ? "1 mark" : `${cell.markCount} marks`}</span>
      )}
      {cell.retakeOn !== null && <span className={classes.small}>retake on {cell.retakeOn}</span>}
      {cell.retakeOn === null && cell.attempt > 1 && (
        <span className={classes.small}>attempt {cell.attempt}</span>
      )}
      {cell.timedOut && <span className={classes.small}>time ran out</span>}
      {bias !== null && <span className={classes.small}>{bias}</span>}
      {cell.overrules + cell.comments > 0 && <span className={classes.small}>{toReviewWords(cell)}</span>}
      {cell.suspectStone !== null && <span className={classes.suspect}>reads like {cell.suspectStone}</span>}
    </>
  );
}

export interface ReviewCellViewProps {
  cell: ReviewCell;
  exerciseId: string;
  /** Filter and order, which the review goes on by. */
  query: string;
  studentName: string;
  stoneLabel: string;
  /** Whether a review is likely to begin with it. */
  isFirst: boolean;
  isSelected: boolean;
  onSelect: (sittingId: string, on: boolean) => void;
}

/** The attempts before the one that the cell shows: each is opened, and released, by itself. */
function EarlierAttempts({ cell, exerciseId, query, studentName }: ReviewCellViewProps) {
  if (cell.earlier.length === 0) return null;
  return (
    <ul className={classes.earlier}>
      {cell.earlier.map(({ sittingId, state, label }, index) => {
        const words = `attempt ${index + 1}: ${CELL_STATE_WORDS[state].words.toLowerCase()}`;
        return (
          <li key={sittingId}>
            <Link
              href={`/exercises/${exerciseId}/sittings/${sittingId}${query}`}
              aria-label={`${studentName}, ${label}, ${words}`}
            >
              {words}
            </Link>
          </li>
        );
      })}
    </ul>
  );
}

/** One student's one stone: state, points, what was found. Opens it; can be selected once it is scored. */
export function ReviewCellView(props: ReviewCellViewProps) {
  const { cell, exerciseId, query, studentName, stoneLabel, isFirst, isSelected, onSelect } = props;
  const { sittingId } = cell;
  const words = `${studentName}, ${stoneLabel}: ${toCellWords(cell, CELL_STATE_WORDS[cell.state].words)}`;
  if (sittingId === null) {
    return (
      <td className={classes.cell} data-state={cell.state}>
        <span className={classes.still}>
          <CellContent cell={cell} />
        </span>
      </td>
    );
  }
  const canSelect = cell.state === "scored" || cell.state === "released";
  const link = {
    href: `/exercises/${exerciseId}/sittings/${sittingId}${query}`,
    className: classes.open,
    "aria-label": words,
  };
  return (
    <td
      className={classes.cell}
      data-state={cell.state}
      data-selected={isSelected}
      data-earlier={cell.earlier.length > 0 || undefined}
    >
      {canSelect ? (
        <EagerLink {...link} isLikely={isFirst}>
          <CellContent cell={cell} />
        </EagerLink>
      ) : (
        <Link {...link}>
          <CellContent cell={cell} />
        </Link>
      )}
      <EarlierAttempts {...props} />
      {canSelect && (
        <Checkbox
          size="sm"
          className={classes.select}
          aria-label={`Select ${studentName}, ${stoneLabel}`}
          checked={isSelected}
          onChange={(event) => onSelect(sittingId, event.currentTarget.checked)}
        />
      )}
    </td>
  );
}
