"use client";

import { useEffect, useState, useSyncExternalStore } from "react";
import { type BenchPresence, NoteLine } from "@/components/bench/note-line";
import type { StudentNote } from "@/lib/plot/bench-note";

const PATIENCE_MS = 8000;

async function post(address: string, body: unknown): Promise<unknown> {
  try {
    const answer = await fetch(address, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify(body),
      // The last word is said while the page goes away.
      keepalive: true,
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
    return answer.ok ? await answer.json() : null;
  } catch {
    return null;
  }
}

function createLine(sittingId: string): NoteLine {
  const address = `/api/sittings/${encodeURIComponent(sittingId)}`;
  return new NoteLine({
    openSource: () => new EventSource(`${address}/notes/stream`),
    say: (presence: BenchPresence) => post(`${address}/presence`, { presence }),
    saySeen: async (noteId) => (await post(`${address}/notes/seen`, { noteId })) !== null,
    isVisible: () => document.visibilityState === "visible",
  });
}

/** The notes to a bench that are to be read, and how one is put away. */
export function useNoteLine(sittingId: string): {
  notes: readonly StudentNote[];
  dismiss: (noteId: string) => void;
} {
  const [line] = useState(() => createLine(sittingId));
  useEffect(() => {
    line.start();
    document.addEventListener("visibilitychange", line.heedVisibility);
    window.addEventListener("pagehide", line.leave);
    return () => {
      document.removeEventListener("visibilitychange", line.heedVisibility);
      window.removeEventListener("pagehide", line.leave);
      line.leave();
      line.stop();
    };
  }, [line]);
  const notes = useSyncExternalStore(line.subscribe, line.getNotes, line.getNotes);
  return { notes, dismiss: line.dismiss };
}
