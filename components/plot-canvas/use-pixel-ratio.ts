import { useSyncExternalStore } from "react";

function subscribe(listener: () => void): () => void {
  const query = window.matchMedia(`(resolution: ${window.devicePixelRatio}dppx)`);
  query.addEventListener("change", listener);
  return () => query.removeEventListener("change", listener);
}

/** Device pixels for one CSS px, followed as the window moves to another screen or the page is zoomed. */
export function usePixelRatio(): number {
  return useSyncExternalStore(
    subscribe,
    () => window.devicePixelRatio || 1,
    () => 1,
  );
}
