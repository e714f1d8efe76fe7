"use client";

import { useEffect } from "react";
import { takeReviewed } from "@/components/review/reviewed-flag";
import { useRefresh } from "@/components/ui/use-refresh";

const REFRESH_MS = 3000;

/** Reads the grid again where it is shown after a review that may have changed it. */
export function useReviewedRefresh(): void {
  const refresh = useRefresh();
  useEffect(() => {
    if (takeReviewed()) refresh();
  }, [refresh]);
}

/** Reads the grid again every few seconds while something is still being scored. */
export function useScoringRefresh(isScoring: boolean): void {
  const refresh = useRefresh();
  useEffect(() => {
    if (!isScoring) return;
    const timer = window.setInterval(() => refresh(), REFRESH_MS);
    return () => window.clearInterval(timer);
  }, [isScoring, refresh]);
}
