import { Button } from "@mantine/core";
import Link from "next/link";
import type { ReactNode } from "react";
import classes from "@/components/bench/bench-header.module.css";
import { When } from "@/components/ui/when";
import { CUT_LABELS } from "@/lib/gem/cut-name";
import type { BenchView } from "@/lib/plot/student-view";

export interface BenchHeaderProps {
  view: BenchView;
  /** Where the exercise stands with its other stones. */
  homeHref: string;
  /** What the server's clock is ahead of the browser's, ms. */
  clockAheadMs: number;
  /** Of a timed stone. */
  timeLeft: ReactNode;
  onPreparation: (() => void) | null;
}

/** One line over the diagrams: which stone, how to hold it, by when. */
export function BenchHeader({ view, homeHref, clockAheadMs, timeLeft, onPreparation }: BenchHeaderProps) {
  const { stone } = view;
  const facts = [
    CUT_LABELS[stone.cut],
    ...(stone.weightCt === undefined ? [] : [`${stone.weightCt.toFixed(2)} ct`]),
    ...(stone.measurementsMm === undefined
      ? []
      : [`${stone.measurementsMm.map((mm) => mm.toFixed(2)).join(" × ")} mm`]),
  ];
  return (
    <header className={classes.root}>
      <h1 className={classes.title} tabIndex={-1} id="bench-title">
        {stone.label}
      </h1>
      <p className={classes.facts}>
        {facts.join(" · ")}
        {stone.landmark !== undefined && (
          <>
            {" · "}
            <span className={classes.landmark}>Hold it by: {stone.landmark}</span>
          </>
        )}
      </p>
      <p className={classes.due}>
        <Link href={homeHref}>{view.exerciseTitle}</Link>, due{" "}
        <When iso={view.dueAt} show="both" aheadMs={clockAheadMs} />
      </p>
      {timeLeft}
      {onPreparation !== null && (
        <Button variant="subtle" size="compact-sm" onClick={onPreparation}>
          Preparation
        </Button>
      )}
    </header>
  );
}
