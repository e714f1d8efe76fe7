"use client";

import type { ActionResult } from "@/components/forms/action-result";
import { GiveUpButton } from "@/components/second-reading/give-up-button";
import classes from "@/components/second-reading/second-reading.module.css";
import { LinkButton } from "@/components/ui/link-button";
import { When } from "@/components/ui/when";
import type { BlindReading } from "@/lib/plot/second-reading";

export interface BlindReadingsProps {
  readings: readonly BlindReading[];
  giveUp: (readingId: string) => Promise<ActionResult>;
}

/** The stones that somebody is reading blind, with the two ways out of it. */
export function BlindReadings({ readings, giveUp }: BlindReadingsProps) {
  return (
    <ul className={classes.blind}>
      {readings.map(({ readingId, stoneId, trayId, trayName, label, createdAt }) => (
        <li key={readingId}>
          <p>
            <strong>{label}</strong> <span className="muted">in {trayName}, begun</span>{" "}
            <When iso={createdAt} />
          </p>
          <div className={classes.blindWays}>
            <LinkButton href={`/trays/${trayId}/stones/${stoneId}/second-reading/${readingId}`}>
              Go on reading
            </LinkButton>
            <GiveUpButton giveUp={giveUp.bind(null, readingId)} />
          </div>
        </li>
      ))}
    </ul>
  );
}
