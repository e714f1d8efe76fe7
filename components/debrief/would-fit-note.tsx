"use client";

import { Switch } from "@mantine/core";
import type { OtherFit } from "@/components/debrief/other-fit";
import classes from "@/components/debrief/would-fit-note.module.css";

function toReason({ view, mirrored }: OtherFit): string {
  if (view === null) {
    return mirrored
      ? "It looks as if the view was drawn from the wrong side."
      : "It looks as if the stone was held turned.";
  }
  return mirrored
    ? "It may have been drawn from the other side: left and right change places there."
    : "The stone may have been held turned when it was laid down anew.";
}

/** Says that the plot, or one view of it, fits another way round, and shows it laid so. It earns nothing. */
export function WouldFitNote({
  fit,
  how,
  isOwn,
  isShown,
  onShow,
}: {
  fit: OtherFit;
  /** How it would be laid, in words. */
  how: string;
  isOwn: boolean;
  isShown: boolean;
  onShow: (shown: boolean) => void;
}) {
  const whose = isOwn ? "Your" : "The";
  return (
    <div className={classes.root}>
      <p>
        <strong>
          {fit.view === null
            ? `${whose} plot fits if it is ${how}:`
            : `${whose} ${fit.view} view fits if it alone is ${how}:`}
        </strong>{" "}
        {fit.gain.toFixed(2)} points more. {toReason(fit)} It earns nothing; it shows what to watch.
      </p>
      <Switch
        label="Show it laid so"
        checked={isShown}
        onChange={(event) => onShow(event.currentTarget.checked)}
      />
    </div>
  );
}
