import type { WatchFlag } from "@/components/watch/judge-row";
import classes from "@/components/watch/watch-board.module.css";

/** The sign of each flag: they differ in shape, so that they read without colour and from afar. */
export function FlagSign({ flag, size = 16 }: { flag: WatchFlag; size?: number }) {
  return (
    <svg
      width={size}
      height={size}
      viewBox="0 0 16 16"
      className={classes.flagSign}
      data-flag={flag}
      aria-hidden="true"
    >
      {flag === "dotting" &&
        [
          [3, 4],
          [8, 2.5],
          [13, 5],
          [5, 9],
          [10.5, 9.5],
          [7, 14],
        ].map(([x, y]) => <circle key={`${x}`} cx={x} cy={y} r="1.9" fill="currentColor" />)}
      {flag === "unprepared" && (
        <path d="M2.5 2.5h11v11h-11z" fill="none" stroke="currentColor" strokeWidth="1.75" />
      )}
      {flag === "stuck" && <path d="M3 2.5v11M8 2.5v11M13 2.5v11" stroke="currentColor" strokeWidth="2.25" />}
      {flag === "idle" && <path d="M2 8h12" stroke="currentColor" strokeWidth="2.25" />}
    </svg>
  );
}
