import classes from "@/components/ui/form-faults.module.css";
import type { Fault } from "@/lib/base/app-error";

const SHOWN = 40;

/** The faults of what was sent, each with the path to it. Nothing is drawn for none. */
export function FormFaults({ faults }: { faults: readonly Fault[] }) {
  if (faults.length === 0) return null;
  return (
    <ul className={classes.root}>
      {faults.slice(0, SHOWN).map((fault) => (
        <li key={`${fault.path}: ${fault.message}`} className={classes.fault}>
          {fault.path !== "" && <code className={classes.path}>{fault.path}</code>}
          <span>{fault.message}</span>
        </li>
      ))}
      {faults.length > SHOWN && <li>and {faults.length - SHOWN} more</li>}
    </ul>
  );
}
