import type { ReactNode } from "react";
import classes from "@/components/ui/empty-state.module.css";

export interface EmptyStateProps {
  title: string;
  /** What to do about it, in a sentence. */
  children?: ReactNode;
  /** The button or link that does it. */
  action?: ReactNode;
}

/** Stands where there is nothing yet, and says what to do. */
export function EmptyState({ title, children, action }: EmptyStateProps) {
  return (
    <div className={classes.root}>
      <svg width="72" height="72" viewBox="0 0 72 72" fill="none" aria-hidden="true" className={classes.sign}>
        <circle cx="36" cy="36" r="30" stroke="currentColor" strokeWidth="1.5" strokeDasharray="3 5" />
        <path d="M36 2v8M36 62v8M2 36h8M62 36h8" stroke="currentColor" strokeWidth="1.5" />
      </svg>
      <div>
        <h2 className={classes.title}>{title}</h2>
        {children !== undefined && <div className={classes.words}>{children}</div>}
        {action !== undefined && <div className={classes.action}>{action}</div>}
      </div>
    </div>
  );
}
