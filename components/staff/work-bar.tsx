import classes from "@/components/staff/work-bar.module.css";
import type { ExerciseRow } from "@/lib/plot/staff-view";

/** How far an exercise's work is: released, handed in and waiting, not handed in; as a bar and in words. */
export function WorkBar({ students, stones, handedIn, released }: ExerciseRow) {
  const all = students * stones;
  const toPct = (count: number) => `${all === 0 ? 0 : (count / all) * 100}%`;
  return (
    <div className={classes.root}>
      <div className={classes.track} aria-hidden="true">
        <span className={classes.released} style={{ inlineSize: toPct(released) }} />
        <span className={classes.waiting} style={{ inlineSize: toPct(handedIn - released) }} />
      </div>
      <p className={classes.words}>
        {all === 0 ? "No student is enrolled yet" : `${handedIn} of ${all} handed in, ${released} released`}
      </p>
    </div>
  );
}
