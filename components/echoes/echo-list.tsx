"use client";

import { Button } from "@mantine/core";
import { useId, useState } from "react";
import type { EchoRow } from "@/components/echoes/build-echo-layer";
import classes from "@/components/echoes/echo-list.module.css";
import type { Echoes } from "@/components/echoes/use-echoes";

/** Rows shown before somebody asks for all of them. */
const FEW = 8;

export interface EchoListProps {
  rows: readonly EchoRow[];
  state: Echoes["state"];
  /** Whether any inside mark has a depth. */
  hasSources: boolean;
  /** The number of the mark whose echoes these are; null when they are all marks'. */
  ofNumber: number | null;
  highlightKey: string | null;
  onHighlight: (key: string | null) => void;
  /** Makes the echo a decoy, or takes its decoy back. */
  onToggle: (row: EchoRow) => void;
}

function toStateWords({ rows, state, hasSources, ofNumber }: EchoListProps): string {
  if (!hasSources) return "Give an inside mark a depth, and its echoes are predicted here.";
  if (state === "failed") return "The echoes could not be worked out. The drawing is not touched by that.";
  if (state === "working") return "Working them out…";
  const whose = ofNumber === null ? "" : ` of mark ${ofNumber}`;
  return rows.length === 0 ? `No echo${whose} is strong enough to be seen.` : "";
}

interface RowProps extends Pick<EchoListProps, "highlightKey" | "onHighlight" | "onToggle"> {
  row: EchoRow;
}

function EchoItem({ row, highlightKey, onHighlight, onToggle }: RowProps) {
  const wordsId = useId();
  const buttonId = useId();
  const { echo, words, decoy } = row;
  return (
    <li
      className={classes.row}
      data-highlighted={echo.key === highlightKey || undefined}
      onPointerEnter={() => onHighlight(echo.key)}
      onPointerLeave={() => onHighlight(null)}
      onFocus={() => onHighlight(echo.key)}
      onBlur={() => onHighlight(null)}
    >
      <span className={classes.strength} aria-hidden="true">
        <i style={{ inlineSize: `${Math.round(100 * echo.strength)}%` }} />
      </span>
      <span id={wordsId}>
        {echo.view === "crown" ? "Crown" : "Pavilion"}: {words}
      </span>
      <Button
        id={buttonId}
        size="compact-sm"
        variant={decoy === null ? "outline" : "subtle"}
        aria-labelledby={`${buttonId} ${wordsId}`}
        onClick={() => onToggle(row)}
      >
        {decoy === null ? "Make it a decoy" : `Decoy ${decoy.number}: take it back`}
      </Button>
    </li>
  );
}

/** Predicted echoes in words, strongest first, each with the button that makes it a decoy. */
export function EchoList(props: EchoListProps) {
  const { rows, ofNumber } = props;
  const [isWhole, setWhole] = useState(false);
  const titleId = useId();
  const shown = isWhole ? rows : rows.slice(0, FEW);
  return (
    <section className={classes.root} aria-labelledby={titleId}>
      <h2 id={titleId} className={classes.heading}>
        Predicted echoes{ofNumber === null ? "" : ` of mark ${ofNumber}`}{" "}
        <span className="muted">{rows.length}</span>
      </h2>
      <p className={classes.hint}>
        Where this stone repeats an inclusion, as the eye sees it straight down. Select a mark to see its own
        alone. Pressing a ring on the diagram with the select tool makes it a decoy too.
      </p>
      <p role="status" className={classes.hint}>
        {toStateWords(props)}
      </p>
      {rows.length > 0 && (
        <ul className={classes.list}>
          {shown.map((row) => (
            <EchoItem key={row.echo.key} {...props} row={row} />
          ))}
        </ul>
      )}
      {rows.length > FEW && (
        <Button variant="subtle" size="compact-sm" onClick={() => setWhole(!isWhole)} aria-expanded={isWhole}>
          {isWhole ? "Show the strongest alone" : `Show all ${rows.length}`}
        </Button>
      )}
    </section>
  );
}
