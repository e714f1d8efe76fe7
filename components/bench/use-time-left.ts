"use client";

import { useEffect, useRef, useState } from "react";
import type { Saving } from "@/components/bench/use-save-client";
import { GRACE_MS } from "@/lib/plot/time-limit";

const SECOND_MS = 1000;
/** After the grace, so long until the server has surely handed in what another device left, ms. */
const SWEPT_AFTER_MS = GRACE_MS + 8000;

/**
 * Milliseconds until the time runs out by the server's clock, 0 once it has; null without a limit. Counts by the
 * second, and whenever the page is looked at again. At the end the bench hands in; one that only looks on waits until
 * whoever writes has, or the server did. `onEnd` shows what came of it.
 */
export function useTimeLeft({ endsAt, clock, client }: Saving, onEnd: () => void): number | null {
  const [leftMs, setLeft] = useState<number | null>(null);
  const latest = useRef({ endsAt, onEnd });
  latest.current = { endsAt, onEnd };
  const isEnding = useRef(false);

  useEffect(() => {
    if (endsAt === null) {
      setLeft(null);
      return;
    }
    const isOver = () => clock.nowMs() >= Date.parse(latest.current.endsAt ?? "9999");
    const end = async () => {
      isEnding.current = true;
      if (await client?.endOnTime(isOver)) latest.current.onEnd();
      isEnding.current = false;
    };
    const look = () => {
      const left = Date.parse(endsAt) - clock.nowMs();
      setLeft(Math.max(0, left));
      if (left > 0 || client === null || isEnding.current) return;
      if (client.getState().canWrite) void end();
      else if (left < -SWEPT_AFTER_MS && client.getState().word !== "opening") latest.current.onEnd();
    };
    look();
    const timer = setInterval(look, SECOND_MS);
    document.addEventListener("visibilitychange", look);
    return () => {
      clearInterval(timer);
      document.removeEventListener("visibilitychange", look);
    };
  }, [endsAt, clock, client]);
  return leftMs;
}
