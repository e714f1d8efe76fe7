"use client";

import { useCallback, useEffect, useRef, useState } from "react";

/** How unsaved work is written down in this browser. */
interface KeptDraft<T> {
  readonly keptAt: string;
  /** The version or revision on the server that the work was begun on. */
  readonly base: number;
  readonly value: T;
}

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
  readonly set: (next: T) => void;
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
  /** The value is safe on the server: forgets the kept copy and leaves what is shown as it is. */
  readonly settle: () => void;
}

const WRITE_DELAY_MS = 250;

function readKept<T>(key: string, parse: (kept: unknown) => T | null): KeptDraft<T> | null {
  try {
    const text = window.localStorage.getItem(key);
    if (text === null) return null;
    const kept = JSON.parse(text) as { keptAt?: unknown; base?: unknown; value?: unknown };
    const value = parse(kept.value);
    if (value === null || typeof kept.keptAt !== "string" || typeof kept.base !== "number") return null;
    return { keptAt: kept.keptAt, base: kept.base, value };
  } catch {
    return null;
  }
}

function writeKept<T>(key: string, draft: KeptDraft<T> | null): boolean {
  try {
    if (draft === null) window.localStorage.removeItem(key);
    else window.localStorage.setItem(key, JSON.stringify(draft));
    return true;
  } catch {
    return false;
  }
}

/**
 * Work that is not saved yet, kept in this browser as it is done: it survives a reload and a closed window, and goes
 * when it is saved or thrown away. The first render shows `initial`; kept work is brought back right after it.
 */
export function useKeptDraft<T>({
  storageKey,
  initial,
  base: initialBase,
  parse,
}: DraftOptions<T>): Draft<T> {
  const [value, setValue] = useState(initial);
  const [base, setBase] = useState(initialBase);
  const [isDirty, setDirty] = useState(false);
  const [restoredFrom, setRestoredFrom] = useState<string | null>(null);
  const [canKeep, setCanKeep] = useState(true);
  const [generation, setGeneration] = useState(0);
  const pending = useRef<KeptDraft<T> | null>(null);
  const timer = useRef<number | undefined>(undefined);
  const parseRef = useRef(parse);

  const flush = useCallback(() => {
    window.clearTimeout(timer.current);
    if (pending.current === null) return;
    setCanKeep(writeKept(storageKey, pending.current));
    pending.current = null;
  }, [storageKey]);

  useEffect(() => {
    const kept = readKept(storageKey, parseRef.current);
    if (kept !== null) {
      setValue(kept.value);
      setBase(kept.base);
      setDirty(true);
      setRestoredFrom(kept.keptAt);
      setGeneration((n) => n + 1);
    }
    window.addEventListener("pagehide", flush);
    return () => {
      window.removeEventListener("pagehide", flush);
      flush();
    };
  }, [storageKey, flush]);

  const set = useCallback(
    (next: T) => {
      setValue(next);
      setDirty(true);
      pending.current = { keptAt: new Date().toISOString(), base, value: next };
      window.clearTimeout(timer.current);
      timer.current = window.setTimeout(flush, WRITE_DELAY_MS);
    },
    [base, flush],
  );

  const reset = useCallback(
    (next: T, nextBase: number) => {
      window.clearTimeout(timer.current);
      pending.current = null;
      writeKept(storageKey, null);
      setValue(next);
      setBase(nextBase);
      setDirty(false);
      setRestoredFrom(null);
      setGeneration((n) => n + 1);
    },
    [storageKey],
  );

  const settle = useCallback(() => {
    window.clearTimeout(timer.current);
    pending.current = null;
    writeKept(storageKey, null);
    setDirty(false);
    setRestoredFrom(null);
  }, [storageKey]);

  // The page was read again and nothing is unsaved: follow the server.
  const latest = useRef(initial);
  latest.current = initial;
  useEffect(() => {
    if (isDirty || base === initialBase) return;
    setValue(latest.current);
    setBase(initialBase);
    setGeneration((n) => n + 1);
  }, [isDirty, base, initialBase]);

  return { value, set, base, setBase, isDirty, restoredFrom, canKeep, generation, reset, settle };
}
