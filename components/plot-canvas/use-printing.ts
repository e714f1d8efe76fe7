import { useSyncExternalStore } from "react";

let isPrinting = false;

function subscribe(listener: () => void): () => void {
  const follow = ({ type }: Event) => {
    isPrinting = type === "beforeprint";
    listener();
  };
  window.addEventListener("beforeprint", follow);
  window.addEventListener("afterprint", follow);
  return () => {
    window.removeEventListener("beforeprint", follow);
    window.removeEventListener("afterprint", follow);
  };
}

/** Whether the page is being put on paper: what is painted, and not styled, then has to be painted for it. */
export function usePrinting(): boolean {
  return useSyncExternalStore(
    subscribe,
    () => isPrinting,
    () => false,
  );
}
