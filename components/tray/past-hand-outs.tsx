import classes from "@/components/tray/past-hand-outs.module.css";
import { When } from "@/components/ui/when";
import type { HandOutView } from "@/lib/plot/hand-out";

/** Who had a stone before, newest first. Nothing for one that was never out. */
export function PastHandOuts({ handOuts }: { handOuts: readonly HandOutView[] }) {
  if (handOuts.length === 0) return null;
  return (
    <details className={classes.root}>
      <summary>Who had it before ({handOuts.length})</summary>
      <ul className={classes.list}>
        {handOuts.map(({ handOutId, holder, handedOutAt, returnedAt, returnedBy, note }) => (
          <li key={handOutId}>
            <strong>{holder}</strong>, <When iso={handedOutAt} />
            {returnedAt !== null && (
              <>
                {" "}
                to <When iso={returnedAt} />, taken back by {returnedBy}
              </>
            )}
            {note !== "" && <span className="muted"> “{note}”</span>}
          </li>
        ))}
      </ul>
    </details>
  );
}
