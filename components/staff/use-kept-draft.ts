"use client";

import { useCallback, useEffect, useRef, useState } from "react";
import { findKeptDraft, forgetDraft, type KeptDraft, keepDraft } from "@/components/staff/kept-draft-store";

export interface DraftOptions<T> {
  /** Names the work and whose it is; two people on one machine do not see each other's. */
  readonly storageKey: string;
  readonly initial: T;
  readonly base: number;
  /** Judges what was kept, perhaps by an older program; null throws it away. */
  readonly parse: (kept: unknown) => T | null;
}

export interface Draft<T> {
  readonly value: T;
  readonly update: (change: (before: T) => T) => void;
  /** What the work was begun on: behind the server's when somebody else has saved since. */
  readonly base: number;
  readonly setBase: (base: number) => void;
  readonly isDirty: boolean;
  /** When the work that was brought back had been kept; null when nothing was brought back. */
  readonly restoredFrom: string | null;
  /** False when this browser refuses to keep anything. */
  readonly canKeep: boolean;
  /** Counts up whenever the whole value is replaced from outside: a key to remount an editor by. */
  readonly generation: number;
  /** Forgets the kept work and starts from the given value. */
  readonly reset: (value: T, base: number) => void;
  /**
   * The value is safe on the server: forgets the kept copy and goes on from what is shown, without a new generation.
   * `base`: the version that it was saved as, where that is known; `value`: what the next change begins from.
   */
  readonly settle: (base?: number, value?: T) => void;
}

interface DraftState<T> {
  readonly value: T;
  readonly base: number;
  readonly isDirty: boolean;
  readonly restoredFrom: string | null;
  readonly generation: number;
}

const WRITE_DELAY_MS = 250;

/** Writes the latest value down after a short pause, and at once when the page is left. */
function useDelayedKeeping<T>(storageKey: string) {
  const [canKeep, setCanKeep] = useState(true);
  const waiting = useRef<KeptDraft<T> | null>(null);
  const timer = useRef<number | undefined>(undefined);
  const flush = useCallback(() => {
    window.clearTimeout(timer.current);
    if (waiting.current !== null) setCanKeep(keepDraft(storageKey, waiting.current));
    waiting.current = null;
  }, [storageKey]);
  const keep = useCallback(
    (draft: KeptDraft<T>) => {
      waiting.current = draft;
      window.clearTimeout(timer.current);
      timer.current = window.setTimeout(flush, WRITE_DELAY_MS);
    },
    [flush],
  );
  const forget = useCallback(() => {
    window.clearTimeout(timer.current);
    waiting.current = null;
    forgetDraft(storageKey);
  }, [storageKey]);
  useEffect(() => {
    window.addEventListener("pagehide", flush);
    return () => {
      window.removeEventListener("pagehide", flush);
      flush();
    };
  }, [flush]);
  return { keep, forget, canKeep };
}

/**
 * Work that is not saved yet, kept in this browser as it is done: it survives a reload and a closed window, and goes
 * when it is saved or thrown away. The first render shows `initial`; kept work is brought back right after it.
 */
export function useKeptDraft<T>({ storageKey, initial, base, parse }: DraftOptions<T>): Draft<T> {
  const [state, setState] = useState<DraftState<T>>({
    value: initial,
    base,
    isDirty: false,
    restoredFrom: null,
    generation: 0,
  });
  const { keep, forget, canKeep } = useDelayedKeeping<T>(storageKey);
  const latest = useRef({ initial, parse, state });
  latest.current = { initial, parse, state };

  useEffect(() => {
    const kept = findKeptDraft(storageKey, latest.current.parse);
    if (kept === null) return;
    setState(({ generation }) => ({
      value: kept.value,
      base: kept.base,
      isDirty: true,
      restoredFrom: kept.keptAt,
      generation: generation + 1,
    }));
  }, [storageKey]);

  // The page was read again, somebody saved since and nothing is unsaved: follow the server.
  const { isDirty, base: begunOn } = state;
  useEffect(() => {
    if (isDirty || begunOn >= base) return;
    setState(({ generation }) => ({
      value: latest.current.initial,
      base,
      isDirty: false,
      restoredFrom: null,
      generation: generation + 1,
    }));
  }, [isDirty, begunOn, base]);

  const update = useCallback(
    (change: (before: T) => T) => {
      const before = latest.current.state;
      const next = { ...before, value: change(before.value), isDirty: true };
      latest.current.state = next;
      setState(next);
      keep({ keptAt: new Date().toISOString(), base: next.base, value: next.value });
    },
    [keep],
  );
  const setBase = useCallback((next: number) => setState((before) => ({ ...before, base: next })), []);
  const settle = useCallback(
    (nextBase?: number, next?: T) => {
      forget();
      setState((before) => ({
        ...before,
        base: nextBase ?? before.base,
        value: next ?? before.value,
        isDirty: false,
        restoredFrom: null,
      }));
    },
    [forget],
  );
  const reset = useCallback(
    (value: T, nextBase: number) => {
      forget();
      setState(({ generation }) => ({
        value,
        base: nextBase,
        isDirty: false,
        restoredFrom: null,
        generation: generation + 1,
      }));
    },
    [forget],
  );
  return { ...state, update, setBase, canKeep, reset, settle };
}
