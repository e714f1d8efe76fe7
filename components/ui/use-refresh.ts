"use client";

import { useRouter } from "next/navigation";
import { useCallback } from "react";

/** Any answer of the server does; this one costs it the least. */
const PROBE = "/icon.svg";

/**
 * Reads the page's data anew, where the server answers. Where it does not, the router would put the browser's own error page in
 * place of ours, with all that is on it: so it is asked first, and what is shown stays.
 */
export function useRefresh(): () => void {
  const router = useRouter();
  return useCallback(() => {
    fetch(PROBE, { method: "HEAD", cache: "no-store" }).then(
      () => router.refresh(),
      () => {},
    );
  }, [router]);
}
