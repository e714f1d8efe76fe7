"use client";

import { useRouter } from "next/navigation";
import { useEffect } from "react";
import { takeReviewed } from "@/components/review/reviewed-flag";

const REFRESH_MS = 3000;

/** Reads the grid again where it is shown after a review that may have changed it. */
export function useReviewedRefresh(): void {
  const router = useRouter();
  useEffect(() => {
    if (takeReviewed()) router.refresh();
  }, [router]);
}

/** Reads the grid again every few seconds while something is still being scored. */
export function useScoringRefresh(isScoring: boolean): void {
  const router = useRouter();
  useEffect(() => {
    if (!isScoring) return;
    const timer = window.setInterval(() => router.refresh(), REFRESH_MS);
    return () => window.clearInterval(timer);
  }, [isScoring, router]);
}
