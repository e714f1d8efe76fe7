import classes from "@/components/ui/practice-note.module.css";

/** Stands wherever grades are shown. */
export function PracticeNote() {
  return (
    <p className={classes.root}>A classroom grade is practice, not a laboratory report or an appraisal.</p>
  );
}
