import { STEP_WORDS } from "@/components/bench/preparation-steps";
import classes from "@/components/watch/watch-board.module.css";
import { toPreparedWords } from "@/components/watch/watch-words";
import { PREPARATION_STEPS } from "@/lib/plot/sitting-event";
import type { WatchRow } from "@/lib/plot/watch-view";

/** The steps of the preparation card in their order: filled where confirmed. */
export function PreparedPips({ row }: { row: WatchRow }) {
  const words = toPreparedWords(row);
  if (row.preparation === "off") return <span className="muted">{words}</span>;
  const open = PREPARATION_STEPS.filter((step) => !row.prepared.includes(step));
  const title =
    open.length === 0 ? "" : `Not confirmed: ${open.map((step) => STEP_WORDS[step].title).join("; ")}`;
  return (
    <span className={classes.pips} title={title || undefined}>
      {PREPARATION_STEPS.map((step) => (
        <span key={step} className={classes.pip} data-done={row.prepared.includes(step)} aria-hidden="true" />
      ))}
      <span className={classes.pipWords}>{words}</span>
    </span>
  );
}
