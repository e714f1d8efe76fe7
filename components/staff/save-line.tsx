import { Button } from "@mantine/core";
import classes from "@/components/staff/save-line.module.css";

export interface SaveLineProps {
  label: string;
  pending: boolean;
  disabled: boolean;
  /** Fields that keep it from being saved. */
  faultCount: number;
  /** Where the work stands. */
  words: string;
}

/** The foot of a long form, always in sight: the button, and where the work stands. */
export function SaveLine({ label, pending, disabled, faultCount, words }: SaveLineProps) {
  return (
    <div className={classes.root}>
      <Button type="submit" loading={pending} disabled={disabled}>
        {label}
      </Button>
      <span role="status" className={classes.words} data-bad={faultCount > 0}>
        {faultCount === 0
          ? words
          : faultCount === 1
            ? "One field needs another look; it is marked."
            : `${faultCount} fields need another look; they are marked.`}
      </span>
    </div>
  );
}
