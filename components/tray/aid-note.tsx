import classes from "@/components/tray/aid-note.module.css";

/** What the check is and is not; stands wherever it answers. */
export function AidNote() {
  return (
    <p className={classes.root}>
      An aid to tell the stones of one tray apart in a classroom. It compares with that tray’s references and
      nothing else, gives an order and no probability, and is no identification for any other purpose.
    </p>
  );
}
