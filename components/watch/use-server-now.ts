"use client";

import { useEffect, useState } from "react";

const TICK_MS = 1000;

/** The server's time, ms since 1970, carried on every second by the browser's clock and set right by `aheadMs`. */
export function useServerNow(aheadMs: number, firstMs: number): number {
  const [nowMs, setNow] = useState(firstMs);
  useEffect(() => {
    const tick = () => setNow(Date.now() + aheadMs);
    tick();
    const timer = setInterval(tick, TICK_MS);
    return () => clearInterval(timer);
  }, [aheadMs]);
  return nowMs;
}
