"use client";

import { useEffect, useRef, useState } from "react";
import { countFramesUntil, type ReplayFrame } from "@/components/debrief/replay-sitting";

/** A pause on the bench longer than this is cut down to it when pauses are skipped. */
const LONGEST_PAUSE_MS = 2000;

export const SPEEDS = [1, 4, 16, 64] as const;

export interface Replay {
  readonly frames: readonly ReplayFrame[];
  readonly tMs: number;
  readonly endMs: number;
  /** How many frames are done. */
  readonly done: number;
  readonly isPlaying: boolean;
  readonly speed: number;
  readonly skipsPauses: boolean;
  readonly seek: (tMs: number) => void;
  readonly toggle: () => void;
  readonly setSpeed: (speed: number) => void;
  readonly setSkipsPauses: (skips: boolean) => void;
}

/** The next moment of the sitting after so much time has been played. */
function advance(
  frames: readonly ReplayFrame[],
  tMs: number,
  playedMs: number,
  skipsPauses: boolean,
): number {
  const next = frames[countFramesUntil(frames, tMs)];
  if (next === undefined) return Number.POSITIVE_INFINITY;
  const from = skipsPauses ? Math.max(tMs, next.atMs - LONGEST_PAUSE_MS) : tMs;
  return from + playedMs;
}

/** Plays the log of a sitting. Nothing moves until it is told to. */
export function useReplay(frames: readonly ReplayFrame[]): Replay {
  const endMs = frames.at(-1)?.atMs ?? 0;
  const [tMs, setT] = useState(endMs);
  const [isPlaying, setPlaying] = useState(false);
  const [speed, setSpeed] = useState<number>(16);
  const [skipsPauses, setSkipsPauses] = useState(true);
  const settings = useRef({ speed, skipsPauses });
  settings.current = { speed, skipsPauses };
  const [shown, setShown] = useState(frames);
  if (shown !== frames) {
    setShown(frames);
    setT(endMs);
    setPlaying(false);
  }

  useEffect(() => {
    if (!isPlaying) return;
    let lastMs = performance.now();
    let frame = requestAnimationFrame(function step(nowMs) {
      const playedMs = (nowMs - lastMs) * settings.current.speed;
      lastMs = nowMs;
      setT((before) => Math.min(endMs, advance(frames, before, playedMs, settings.current.skipsPauses)));
      frame = requestAnimationFrame(step);
    });
    return () => cancelAnimationFrame(frame);
  }, [isPlaying, frames, endMs]);

  useEffect(() => {
    if (isPlaying && tMs >= endMs) setPlaying(false);
  }, [isPlaying, tMs, endMs]);

  return {
    frames,
    tMs,
    endMs,
    done: countFramesUntil(frames, tMs),
    isPlaying,
    speed,
    skipsPauses,
    seek: (to) => setT(Math.min(endMs, Math.max(0, to))),
    toggle: () => {
      if (!isPlaying && tMs >= endMs) setT(0);
      setPlaying(!isPlaying);
    },
    setSpeed,
    setSkipsPauses,
  };
}
