"use client";

import { Switch } from "@mantine/core";
import classes from "@/components/debrief/would-fit-note.module.css";
import type { ScoreResult } from "@/lib/plot/score-result";

type WouldFit = NonNullable<ScoreResult["alignment"]["wouldFit"]>;

/** "turned by 45° clockwise and mirrored". */
export function toLayingWords({ turnDeg, mirrored }: { turnDeg: number; mirrored: boolean }): string {
  const side = turnDeg > 0 ? "clockwise" : "counter-clockwise";
  const turned = turnDeg === 0 ? [] : [`turned by ${Math.abs(turnDeg)}° ${side}`];
  return [...(mirrored ? ["mirrored"] : []), ...turned].join(" and ");
}

/** Says that the plot fits another way round, and shows it laid so. It earns nothing. */
export function WouldFitNote({
  wouldFit,
  isShown,
  onShow,
}: {
  wouldFit: WouldFit;
  isShown: boolean;
  onShow: (shown: boolean) => void;
}) {
  return (
    <div className={classes.root}>
      <p>
        <strong>Your plot fits if it is {toLayingWords(wouldFit)}:</strong> {wouldFit.gain.toFixed(2)} points
        more.{" "}
        {wouldFit.mirrored
          ? "It looks as if the view was drawn from the wrong side."
          : "It looks as if the stone was held turned."}{" "}
        It earns nothing; it shows what to watch.
      </p>
      <Switch
        label="Show it laid so"
        checked={isShown}
        onChange={(event) => onShow(event.currentTarget.checked)}
      />
    </div>
  );
}
