"use client";

import { Hourglass } from "lucide-react";
import { useEffect, useState } from "react";
import classes from "@/components/bench/time-left.module.css";
import { toTimeLeftWords, toTimeWarning } from "@/components/bench/to-time-left-words";

export interface TimeLeftProps {
  leftMs: number;
  /** From the opening to the end, ms: what the bar is drawn by. */
  wholeMs: number;
}

/** What is left of a timed stone, told aloud at five minutes and at one. */
export function TimeLeft({ leftMs, wholeMs }: TimeLeftProps) {
  const [said, setSaid] = useState<string | null>(null);
  const warning = toTimeWarning(leftMs);
  useEffect(() => setSaid(warning), [warning]);
  const share = Math.min(1, leftMs / Math.max(1, wholeMs));
  const stage = leftMs <= 60_000 ? "last" : leftMs <= 300_000 ? "soon" : "calm";
  return (
    <div className={classes.root} data-stage={stage} data-testid="time-left">
      <Hourglass size={16} aria-hidden="true" />
      <span className={classes.words}>{toTimeLeftWords(leftMs)}</span>
      <span className={classes.bar} aria-hidden="true">
        <span style={{ width: `${100 * share}%` }} />
      </span>
      <span className="visually-hidden" role="status">
        {said}
      </span>
    </div>
  );
}
