"use client";

import { useEffect } from "react";

/** Where a letter is typed, or means something of its own. */
const OWN_KEYS =
  "input:not([type=checkbox]):not([type=radio]), textarea, select, [contenteditable], [role=dialog], [role=menu], [role=listbox], [role=combobox]";

/** N and the next plot, P and the one before: nowhere that a letter is typed, and not with another key held. */
export function useStepKeys(go: (step: 1 | -1) => void): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || event.repeat) return;
      if (event.target instanceof Element && event.target.closest(OWN_KEYS) !== null) return;
      const key = event.key.toLowerCase();
      if (key !== "n" && key !== "p") return;
      event.preventDefault();
      go(key === "n" ? 1 : -1);
    };
    window.addEventListener("keydown", onKey);
    return () => window.removeEventListener("keydown", onKey);
  }, [go]);
}
