import { CircleAlert } from "lucide-react";
import type { ReactNode } from "react";
import classes from "@/components/ui/error-note.module.css";
import { FormFaults } from "@/components/ui/form-faults";
import type { Fault } from "@/lib/base/app-error";

export interface ErrorNoteProps {
  /** What happened, as a sentence. */
  message: string;
  /** What of the person's work is safe. Say only what is true. */
  kept?: string;
  /** What to do now. */
  next?: ReactNode;
  faults?: readonly Fault[];
  /** A button to try again, or another way on. */
  action?: ReactNode;
}

/** An error as a person can use it: what happened, that nothing was lost, what to do. Announced when it appears. */
export function ErrorNote({ message, kept, next, faults = [], action }: ErrorNoteProps) {
  return (
    <div role="alert" className={classes.root}>
      <CircleAlert size={20} aria-hidden="true" className={classes.sign} />
      <div className={classes.words}>
        <p className={classes.message}>{message}</p>
        {kept !== undefined && <p>{kept}</p>}
        {next !== undefined && <p>{next}</p>}
        {faults.length > 0 && <FormFaults faults={faults} />}
        {action !== undefined && <div className={classes.action}>{action}</div>}
      </div>
    </div>
  );
}
