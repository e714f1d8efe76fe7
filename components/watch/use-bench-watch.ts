"use client";

import { useEffect, useState } from "react";
import { BenchWatchSchema, type BenchWatchView } from "@/lib/plot/staff-view";

export interface BenchWatchState {
  readonly watch: BenchWatchView | null;
  /** The last question was not answered: what is shown is older than the bench. */
  readonly isLost: boolean;
}

const PATIENCE_MS = 8000;

async function readWatch(sittingId: string, signal: AbortSignal): Promise<BenchWatchView> {
  const patience = AbortSignal.any([signal, AbortSignal.timeout(PATIENCE_MS)]);
  const answer = await fetch(`/api/sittings/${encodeURIComponent(sittingId)}/watch`, {
    cache: "no-store",
    signal: patience,
  });
  if (!answer.ok) throw new Error(`answered ${answer.status}`);
  return BenchWatchSchema.parse(await answer.json());
}

/** A plot as it stands, read again whenever `version` says that the bench has gone on. */
export function useBenchWatch(sittingId: string, version: string): BenchWatchState {
  const [state, setState] = useState<BenchWatchState>({ watch: null, isLost: false });
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new version is the reason to read again.
  useEffect(() => {
    const ending = new AbortController();
    readWatch(sittingId, ending.signal)
      .then((watch) => {
        if (!ending.signal.aborted) setState({ watch, isLost: false });
      })
      .catch(() => {
        if (!ending.signal.aborted) setState((before) => ({ ...before, isLost: true }));
      });
    return () => ending.abort();
  }, [sittingId, version]);
  return state;
}
