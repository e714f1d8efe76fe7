"use client";

import { type ReactNode, useEffect, useId, useRef, useState } from "react";
import { CAUSE_LABELS, type DebriefRow, type Outcome } from "@/components/debrief/debrief-row";
import classes from "@/components/debrief/outcome-rows.module.css";
import { MarkSign } from "@/components/plot-editor/mark-sign";
import { DEFAULT_NOTATION } from "@/lib/plot/notation";

const SECTIONS: readonly { readonly outcome: Outcome; readonly title: string; readonly none: string }[] = [
  { outcome: "found", title: "Found", none: "Nothing of the reference was found." },
  { outcome: "overlooked", title: "Overlooked", none: "Nothing was overlooked." },
  { outcome: "stray", title: "Strays", none: "No strays: everything plotted is in the stone." },
  { outcome: "set-aside", title: "Set aside", none: "" },
];

export interface OutcomeRowsProps {
  rows: readonly DebriefRow[];
  highlightKey: string | null;
  onHighlight: (key: string | null) => void;
  /** What stands beneath a row: what staff ruled and wrote, and their tools. */
  renderNotes?: (row: DebriefRow) => ReactNode;
}

interface RowProps {
  notes: ReactNode;
  row: DebriefRow;
  isHighlighted: boolean;
  onHighlight: (key: string | null) => void;
}

/** "Cost: place 9.96, characteristic 0.28". */
function toCostWords({ costs }: DebriefRow): string {
  if (costs.length === 0) return "Nothing lost.";
  return `Cost: ${costs.map(({ what, points }) => `${what} ${points.toFixed(2)}`).join(", ")}.`;
}

/** A found mark says in short what it cost, and in full when it is pressed; the others say all they have at once. */
function OutcomeRow({ row, notes, isHighlighted, onHighlight }: RowProps) {
  const [isOpen, setOpen] = useState(false);
  const detailsId = useId();
  const isFoldable = row.outcome === "found";
  return (
    <li>
      <button
        type="button"
        className={classes.row}
        data-highlighted={isHighlighted || undefined}
        data-key={row.key}
        onPointerEnter={() => onHighlight(row.key)}
        onPointerLeave={() => onHighlight(null)}
        onFocus={() => onHighlight(row.key)}
        onBlur={() => onHighlight(null)}
        {...(isFoldable
          ? { "aria-expanded": isOpen, "aria-controls": detailsId, onClick: () => setOpen(!isOpen) }
          : {})}
      >
        <MarkSign style={DEFAULT_NOTATION[row.outcome]} text={row.callout} />
        <span className={classes.words}>
          <span className={classes.title}>
            {row.title}
            {row.cause !== null && <span className={classes.cause}>{CAUSE_LABELS[row.cause]}</span>}
            {row.value !== null && (
              <span className={classes.value}>{Math.round(row.value * 100)}% of its worth</span>
            )}
          </span>
          <span className={classes.place}>
            {row.view === "crown" ? "Crown" : "Pavilion"}, {row.place}
          </span>
          {isFoldable && <span className={classes.sentence}>{toCostWords(row)}</span>}
          <span id={detailsId} className={classes.words} data-folded={(isFoldable && !isOpen) || undefined}>
            {row.words.map((sentence) => (
              <span key={sentence} className={classes.sentence}>
                {sentence}
              </span>
            ))}
          </span>
        </span>
      </button>
      {notes}
    </li>
  );
}

/** Every outcome as a row; pointing at a row or focusing it shows it on the diagram, and back. */
export function OutcomeRows({ rows, highlightKey, onHighlight, renderNotes }: OutcomeRowsProps) {
  const root = useRef<HTMLDivElement>(null);
  const isOwn = useRef(false);
  const isShown = (row: DebriefRow) =>
    highlightKey !== null && (row.key === highlightKey || row.partnerKey === highlightKey);
  const highlight = (key: string | null) => {
    isOwn.current = key !== null;
    onHighlight(key);
  };

  useEffect(() => {
    if (highlightKey === null || isOwn.current) return;
    root.current?.querySelector("[data-highlighted]")?.scrollIntoView({ block: "nearest", behavior: "auto" });
  }, [highlightKey]);

  return (
    <div ref={root} className={classes.root}>
      {SECTIONS.map(({ outcome, title, none }) => {
        const own = rows.filter((row) => row.outcome === outcome);
        if (own.length === 0 && none === "") return null;
        return (
          <section key={outcome} aria-label={title}>
            <h2 className={classes.heading}>
              <MarkSign style={DEFAULT_NOTATION[outcome]} />
              {title} <span className="muted">{own.length}</span>
            </h2>
            {own.length === 0 ? (
              <p className="muted">{none}</p>
            ) : (
              <ul className={classes.list}>
                {own.map((row) => (
                  <OutcomeRow
                    key={`${row.key} ${row.partnerKey}`}
                    row={row}
                    notes={renderNotes?.(row)}
                    isHighlighted={isShown(row)}
                    onHighlight={highlight}
                  />
                ))}
              </ul>
            )}
          </section>
        );
      })}
    </div>
  );
}
