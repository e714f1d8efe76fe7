"use client";

import { ActionIcon, Checkbox, SegmentedControl } from "@mantine/core";
import { Pause, Play, SkipBack, SkipForward } from "lucide-react";
import classes from "@/components/debrief/replay-bar.module.css";
import {
  FRAME_SIGNS,
  type FrameSign,
  type ReplayFrame,
  toClockWords,
} from "@/components/debrief/replay-sitting";
import { type Replay, SPEEDS } from "@/components/debrief/use-replay";
import type { DottingBurst } from "@/lib/plot/find-dotting";

const SIGN_PATHS: Readonly<Record<FrameSign, string>> = {
  placed: "M0 2V14",
  changed: "M0 8V14",
  proved: "M-2.8 8.5L-0.6 11.5L3 4.5",
  removed: "M-2.5 5L2.5 10M2.5 5L-2.5 10",
  prepared: "M-2.4 9H2.4V13.8H-2.4Z",
  graded: "M0 11.5V14",
  noted: "M-2.8 4.5H2.8V9H-0.6L-2.8 11.5Z",
};

const SIGN_WORDS: Readonly<Record<FrameSign, string>> = {
  placed: "mark placed",
  changed: "mark changed",
  proved: "proof noted",
  removed: "mark removed",
  prepared: "preparation",
  graded: "grade",
  noted: "note from staff",
};

/** What the signs on the timeline say, as far as they occur in this sitting. */
function TimelineKey({ frames }: { frames: readonly ReplayFrame[] }) {
  const counts = FRAME_SIGNS.map((sign) => ({
    sign,
    count: frames.filter((frame) => frame.sign === sign).length,
  })).filter(({ count }) => count > 0);
  return (
    <ul className={classes.key} aria-label="Signs on the timeline">
      {counts.map(({ sign, count }) => (
        <li key={sign}>
          <svg width="10" height="15" viewBox="-5 0 10 15" data-sign={sign} aria-hidden="true">
            <path d={SIGN_PATHS[sign]} />
          </svg>
          {SIGN_WORDS[sign]} <strong>{count}</strong>
        </li>
      ))}
    </ul>
  );
}

function TimelineMarks({
  frames,
  endMs,
  bursts,
}: {
  frames: readonly ReplayFrame[];
  endMs: number;
  bursts: readonly DottingBurst[];
}) {
  const share = (atMs: number) => `${(100 * atMs) / Math.max(1, endMs)}%`;
  return (
    <div className={classes.marks} aria-hidden="true">
      {bursts.map(({ fromMs, toMs }) => (
        <span
          key={fromMs}
          className={classes.burst}
          style={{ left: share(fromMs), width: share(Math.max(endMs / 200, toMs - fromMs)) }}
        />
      ))}
      {frames.map(({ seq, atMs, sign }) => (
        <svg
          key={seq}
          className={classes.mark}
          style={{ left: share(atMs) }}
          viewBox="-3 0 6 15"
          data-sign={sign}
          aria-hidden="true"
        >
          <path d={SIGN_PATHS[sign]} />
        </svg>
      ))}
    </div>
  );
}

/** Plays a sitting back: play, step, speed, and the line of what was done when. */
export function ReplayBar({ replay, bursts }: { replay: Replay; bursts: readonly DottingBurst[] }) {
  const { frames, tMs, endMs, done, isPlaying } = replay;
  const latest = frames[done - 1];
  return (
    <section className={classes.root} aria-label="Replay of the sitting">
      <div className={classes.controls}>
        <ActionIcon
          variant="outline"
          size={36}
          aria-label="One step back"
          disabled={done === 0}
          onClick={() => replay.seek(done < 2 ? 0 : (frames[done - 2]?.atMs ?? 0))}
        >
          <SkipBack size={16} aria-hidden="true" />
        </ActionIcon>
        <ActionIcon
          variant="filled"
          size={36}
          aria-label={isPlaying ? "Pause" : "Play"}
          disabled={frames.length === 0}
          onClick={replay.toggle}
        >
          {isPlaying ? <Pause size={17} aria-hidden="true" /> : <Play size={17} aria-hidden="true" />}
        </ActionIcon>
        <ActionIcon
          variant="outline"
          size={36}
          aria-label="One step on"
          disabled={done === frames.length}
          onClick={() => replay.seek(frames[done]?.atMs ?? endMs)}
        >
          <SkipForward size={16} aria-hidden="true" />
        </ActionIcon>
        <SegmentedControl
          size="xs"
          aria-label="Speed"
          data={SPEEDS.map((speed) => ({ value: String(speed), label: `${speed}×` }))}
          value={String(replay.speed)}
          onChange={(speed) => replay.setSpeed(Number(speed))}
        />
        <Checkbox
          size="sm"
          label="Skip pauses"
          checked={replay.skipsPauses}
          onChange={(event) => replay.setSkipsPauses(event.currentTarget.checked)}
        />
        <p className={classes.now}>
          <strong>{toClockWords(tMs)}</strong> <span className="muted">of {toClockWords(endMs)}</span>
        </p>
      </div>
      <div className={classes.line}>
        <TimelineMarks frames={frames} endMs={endMs} bursts={bursts} />
        <input
          type="range"
          className={classes.slider}
          aria-label="Time of the sitting"
          aria-valuetext={`${toClockWords(tMs)}${latest === undefined ? "" : `, ${latest.words}`}`}
          min={0}
          max={Math.max(1, endMs)}
          step={Math.max(1, Math.round(endMs / 1000))}
          value={tMs}
          onChange={(event) => replay.seek(Number(event.currentTarget.value))}
        />
      </div>
      <TimelineKey frames={frames} />
      <p className={classes.latest}>{latest?.words ?? "Nothing done yet"}</p>
      {bursts.length > 0 && (
        <p className={classes.legend}>
          <span className={classes.burstSign} aria-hidden="true" />
          {bursts.length === 1 ? "A burst" : `${bursts.length} bursts`} of quick dots: the sign of a stone
          that was not cleaned. Dots that were taken away later count.
        </p>
      )}
    </section>
  );
}
