"use client";

import { useEffect, useRef } from "react";
import classes from "@/components/debrief/replay-events.module.css";
import { toClockWords } from "@/components/debrief/replay-sitting";
import type { Replay } from "@/components/debrief/use-replay";

/** Everything that was done, in order, with its time; pressing one goes there. */
export function ReplayEvents({ replay }: { replay: Replay }) {
  const { frames, done } = replay;
  const list = useRef<HTMLOListElement>(null);
  useEffect(() => {
    const now = list.current?.children[done - 1];
    if (list.current === null || !(now instanceof HTMLElement)) return;
    list.current.scrollTop = now.offsetTop - list.current.clientHeight / 2;
  }, [done]);
  if (frames.length === 0) return <p className="muted">Nothing was recorded in this sitting.</p>;
  return (
    <section aria-label="What was done">
      <h2 className={classes.heading}>
        What was done <span className="muted">{frames.length}</span>
      </h2>
      <ol ref={list} className={classes.list}>
        {frames.map(({ seq, atMs, words }, index) => (
          <li key={seq}>
            <button
              type="button"
              className={classes.event}
              aria-current={index === done - 1 ? "step" : undefined}
              data-ahead={index >= done || undefined}
              onClick={() => replay.seek(atMs)}
            >
              <span className={classes.time}>{toClockWords(atMs)}</span>
              <span>{words}</span>
            </button>
          </li>
        ))}
      </ol>
    </section>
  );
}
