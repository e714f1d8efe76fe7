"use client";

import { Button } from "@mantine/core";
import { useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import classes from "@/components/tray/hand-out-bar.module.css";
import { EMPTY_HOLDER, findHolderName, readHolderDraft } from "@/components/tray/holder-draft";
import { HolderFields } from "@/components/tray/holder-fields";
import { ErrorNote } from "@/components/ui/error-note";
import { useRefresh } from "@/components/ui/use-refresh";
import type { HandOutInput, HolderOption } from "@/lib/plot/hand-out";

export interface HandOutActions {
  readonly handOut: (input: HandOutInput) => Promise<ActionResult<{ handedOut: number }>>;
  readonly takeBack: (stoneIds: readonly string[]) => Promise<ActionResult<{ takenBack: number }>>;
}

export interface HandOutBarProps extends HandOutActions {
  holders: readonly HolderOption[];
  /** The chosen stones, in their trays and out. */
  inTray: readonly string[];
  out: readonly string[];
  onDone: () => void;
}

const count = (stones: readonly string[]) => (stones.length === 1 ? "1 stone" : `${stones.length} stones`);

/** Hands the chosen stones out, or takes them back. */
export function HandOutBar({ holders, inTray, out, onDone, handOut, takeBack }: HandOutBarProps) {
  const refresh = useRefresh();
  const [draft, setDraft] = useState(EMPTY_HOLDER);
  const [words, setWords] = useState("");
  const giving = useAction(handOut);
  const taking = useAction(takeBack);
  const to = readHolderDraft(draft);
  const name = findHolderName(draft, holders);
  const failure = giving.failure ?? taking.failure;
  const finish = (said: string) => {
    setWords(said);
    onDone();
    refresh();
  };
  const give = async () => {
    if (to === null) return;
    taking.clearFailure();
    if ((await giving.run({ ...to, stoneIds: [...inTray] })) === null) return refresh();
    finish(`Handed ${count(inTray)} to ${name}.`);
  };
  const take = async () => {
    giving.clearFailure();
    if ((await taking.run(out)) === null) return refresh();
    finish(`Took ${count(out)} back.`);
  };
  return (
    <section className={`${classes.root} no-print`} aria-labelledby="hand-out-title">
      <h2 id="hand-out-title" className={classes.title}>
        Hand out and take back
      </h2>
      <HolderFields
        draft={draft}
        holders={holders}
        onChange={(part) => setDraft((before) => ({ ...before, ...part }))}
      />
      <div className={classes.buttons}>
        <Button onClick={give} loading={giving.pending} disabled={to === null || inTray.length === 0}>
          {inTray.length === 0 ? "Hand out" : `Hand out ${count(inTray)}`}
        </Button>
        <Button variant="outline" onClick={take} loading={taking.pending} disabled={out.length === 0}>
          {out.length === 0 ? "Take back" : `Take ${count(out)} back`}
        </Button>
        <p className={classes.words} role="status">
          {words === "" ? "Tick stones in the list, or scan their labels at the desk." : words}
        </p>
      </div>
      {failure !== null && <ErrorNote message={failure.message} />}
    </section>
  );
}
