/** Unsaved work as it is written down in this browser. Browser only. */

export interface KeptDraft<T> {
  readonly keptAt: string;
  /** The version or revision on the server that the work was begun on. */
  readonly base: number;
  readonly value: T;
}

/** The kept work, or null when there is none or `parse` no longer takes it. */
export function findKeptDraft<T>(key: string, parse: (kept: unknown) => T | null): KeptDraft<T> | null {
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

/** Keeps the work; false when this browser refuses (no room, or storage turned off). */
export function keepDraft<T>(key: string, draft: KeptDraft<T>): boolean {
  try {
    window.localStorage.setItem(key, JSON.stringify(draft));
    return true;
  } catch {
    return false;
  }
}

/** Forgets the work. */
export function forgetDraft(key: string): void {
  try {
    window.localStorage.removeItem(key);
  } catch {
    // Nothing was kept where storage is turned off.
  }
}

/** What every key of kept work begins with. */
const KEY_PREFIXES = [
  "loupework:exercise:",
  "loupework:stone:",
  "loupework:reference:",
  "loupework:reading:",
  "loupework:rubric:",
];

/**
 * Forgets all work of staff in this browser: at sign-out, and wherever a student is signed in. A machine of the
 * classroom is shared, and unsaved work may hold a reference.
 */
export function forgetAllDrafts(): void {
  try {
    for (const key of Object.keys(window.localStorage)) {
      if (KEY_PREFIXES.some((prefix) => key.startsWith(prefix))) window.localStorage.removeItem(key);
    }
  } catch {
    // Nothing was kept where storage is turned off.
  }
}
