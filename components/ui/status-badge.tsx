import type { ReactNode } from "react";
import classes from "@/components/ui/status-badge.module.css";

/** `idle`: nothing yet; `active`: under way; `done`: complete; `ready`: waits for you; `bad`: needs care. */
export type StatusTone = "idle" | "active" | "done" | "ready" | "bad";

/** The signs differ in shape, so that the state reads without colour. */
function StatusSign({ tone }: { tone: StatusTone }) {
  const ring = <circle cx="8" cy="8" r="6" stroke="currentColor" strokeWidth="1.75" />;
  return (
    <svg width="16" height="16" viewBox="0 0 16 16" fill="none" aria-hidden="true" focusable="false">
      {tone === "idle" && (
        <circle cx="8" cy="8" r="6" stroke="currentColor" strokeWidth="1.75" strokeDasharray="2 2.4" />
      )}
      {tone === "active" && (
        <>
          {ring}
          <path d="M8 2a6 6 0 0 1 0 12z" fill="currentColor" />
        </>
      )}
      {tone === "done" && <circle cx="8" cy="8" r="6.9" fill="currentColor" />}
      {tone === "ready" && (
        <>
          <circle cx="8" cy="8" r="6.9" fill="currentColor" />
          <path d="M4.8 8.2l2.2 2.2 4.2-4.6" stroke="var(--lw-surface)" strokeWidth="1.75" />
        </>
      )}
      {tone === "bad" && (
        <path d="M8 1.8l6.6 11.8H1.4z" stroke="currentColor" strokeWidth="1.75" strokeLinejoin="round" />
      )}
    </svg>
  );
}

/** A state in a word or two, with a sign of its own. */
export function StatusBadge({ tone, children }: { tone: StatusTone; children: ReactNode }) {
  return (
    <span className={classes.root} data-tone={tone}>
      <StatusSign tone={tone} />
      <span>{children}</span>
    </span>
  );
}
