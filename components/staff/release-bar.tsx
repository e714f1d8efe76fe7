"use client";

import { Button } from "@mantine/core";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import classes from "@/components/staff/review-grid.module.css";
import { ConfirmButton } from "@/components/ui/confirm-button";
import { ErrorNote } from "@/components/ui/error-note";
import { useRefresh } from "@/components/ui/use-refresh";
import type { ReviewCell } from "@/lib/plot/staff-view";

export interface ReleaseActions {
  release: (sittingIds: readonly string[]) => Promise<ActionResult<{ count: number }>>;
  withdraw: (sittingIds: readonly string[]) => Promise<ActionResult<{ count: number }>>;
}

export interface ReleaseBarProps extends ReleaseActions {
  cells: readonly ReviewCell[];
  selected: ReadonlySet<string>;
  onClear: () => void;
}

const count = (sittings: readonly string[]) =>
  sittings.length === 1 ? "1 debrief" : `${sittings.length} debriefs`;

/** Releases debriefs or takes releases back: those selected, or all that wait where nothing is. */
export function ReleaseBar({ cells, selected, onClear, release, withdraw }: ReleaseBarProps) {
  const refresh = useRefresh();
  const releasing = useAction(release);
  const withdrawing = useAction(withdraw);
  const list = (state: ReviewCell["state"]) =>
    cells.flatMap((cell) =>
      cell.sittingId !== null && cell.state === state && (selected.size === 0 || selected.has(cell.sittingId))
        ? [cell.sittingId]
        : [],
    );
  const toRelease = list("scored");
  const toWithdraw = selected.size === 0 ? [] : list("released");
  const failure = releasing.failure ?? withdrawing.failure;
  const act = async (run: typeof releasing.run, sittingIds: readonly string[]) => {
    await run(sittingIds);
    onClear();
    refresh();
  };

  return (
    <div className={classes.release}>
      <p role="status" className={classes.releaseWords}>
        {selected.size > 0
          ? `${selected.size} selected.`
          : toRelease.length > 0
            ? `${count(toRelease)} scored and waiting for you.`
            : "Nothing waits to be released."}
      </p>
      {toRelease.length > 0 && (
        <ConfirmButton
          variant="filled"
          question={`Release ${count(toRelease)}?`}
          detail={
            <p>
              Each student can read their own at once: the reference, what they found, and their points. A
              release can be taken back.
            </p>
          }
          confirmLabel="Release"
          onConfirm={() => act(releasing.run, toRelease)}
        >
          {selected.size > 0 ? `Release ${toRelease.length} selected` : `Release all ${toRelease.length}`}
        </ConfirmButton>
      )}
      {toWithdraw.length > 0 && (
        <ConfirmButton
          question={`Take ${count(toWithdraw)} back?`}
          detail={
            <p>
              Students can no longer open them. Whoever has read one has seen the reference of that stone.
            </p>
          }
          confirmLabel="Take back"
          onConfirm={() => act(withdrawing.run, toWithdraw)}
        >
          Take {toWithdraw.length} selected back
        </ConfirmButton>
      )}
      {selected.size > 0 && (
        <Button variant="subtle" onClick={onClear}>
          Select none
        </Button>
      )}
      {failure !== null && (
        <ErrorNote message={failure.message} kept="Nothing was changed." faults={failure.faults} />
      )}
    </div>
  );
}
