"use client";

import { Tooltip } from "@mantine/core";
import { FlagSign } from "@/components/watch/flag-sign";
import { WATCH_FLAGS, type WatchCounts, type WatchFlag } from "@/components/watch/judge-row";
import classes from "@/components/watch/watch-board.module.css";
import { FLAG_WORDS } from "@/components/watch/watch-words";

export interface WatchCountsBarProps {
  counts: WatchCounts;
  /** The flag whose rows alone are shown. */
  flag: WatchFlag | null;
  onFlag: (flag: WatchFlag | null) => void;
}

/** The class in five numbers that read across a room; pressing one shows whom it counts. */
export function WatchCountsBar({ counts, flag, onFlag }: WatchCountsBarProps) {
  return (
    <fieldset className={classes.counts} aria-label="The class now">
      <button
        type="button"
        className={classes.count}
        aria-pressed={flag === null}
        onClick={() => onFlag(null)}
      >
        <strong>{counts.here}</strong> at the bench
      </button>
      {WATCH_FLAGS.map((one) => (
        <Tooltip key={one} label={FLAG_WORDS[one].why} multiline w={260}>
          <button
            type="button"
            className={classes.count}
            data-flag={one}
            data-some={counts[one] > 0}
            aria-pressed={flag === one}
            onClick={() => onFlag(flag === one ? null : one)}
          >
            <strong>{counts[one]}</strong>
            <span className={classes.countWords}>
              <FlagSign flag={one} /> {FLAG_WORDS[one].one}
            </span>
          </button>
        </Tooltip>
      ))}
    </fieldset>
  );
}
