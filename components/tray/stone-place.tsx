"use client";

import { Button } from "@mantine/core";
import { useState } from "react";
import { useAction } from "@/components/forms/use-action";
import type { HandOutActions } from "@/components/tray/hand-out-bar";
import classes from "@/components/tray/hand-out-bar.module.css";
import { EMPTY_HOLDER, findHolderName, readHolderDraft } from "@/components/tray/holder-draft";
import { HolderFields } from "@/components/tray/holder-fields";
import { WhereBadge } from "@/components/tray/where-badge";
import { ErrorNote } from "@/components/ui/error-note";
import { useRefresh } from "@/components/ui/use-refresh";
import type { HandOutView, HolderOption } from "@/lib/plot/hand-out";

export interface StonePlaceProps extends HandOutActions {
  stoneId: string;
  label: string;
  out: HandOutView | null;
  holders: readonly HolderOption[];
}

/** Where one stone is, and the one thing to do about it: hand it out, or take it back. */
export function StonePlace({ stoneId, label, out, holders, handOut, takeBack }: StonePlaceProps) {
  const refresh = useRefresh();
  const [draft, setDraft] = useState(EMPTY_HOLDER);
  const giving = useAction(handOut);
  const taking = useAction(takeBack);
  const to = readHolderDraft(draft);
  const name = findHolderName(draft, holders);
  const failure = giving.failure ?? taking.failure;
  const give = async () => {
    if (to === null) return;
    if ((await giving.run({ ...to, stoneIds: [stoneId] })) !== null) setDraft(EMPTY_HOLDER);
    refresh();
  };
  const take = async () => {
    await taking.run([stoneId]);
    refresh();
  };
  return (
    <section className={`${classes.root} no-print`} aria-labelledby="place-title">
      <div className={classes.buttons}>
        <h2 id="place-title" className={classes.title}>
          Where {label} is
        </h2>
        <WhereBadge out={out} />
        {out !== null && out.note !== "" && <span className="muted">“{out.note}”</span>}
      </div>
      {out === null ? (
        <>
          <HolderFields
            draft={draft}
            holders={holders}
            onChange={(part) => setDraft((before) => ({ ...before, ...part }))}
          />
          <div className={classes.buttons}>
            <Button onClick={give} loading={giving.pending} disabled={to === null}>
              {name === null ? "Hand out" : `Hand out to ${name}`}
            </Button>
          </div>
        </>
      ) : (
        <div className={classes.buttons}>
          <Button onClick={take} loading={taking.pending}>
            Take back
          </Button>
          <span className="muted">Handed out by {out.handedOutBy}</span>
        </div>
      )}
      {failure !== null && <ErrorNote message={failure.message} />}
    </section>
  );
}
