"use client";

import { useCallback, useState } from "react";
import { TrayStonesTable } from "@/components/staff/tray-stones-table";
import { type HandOutActions, HandOutBar } from "@/components/tray/hand-out-bar";
import type { HolderOption } from "@/lib/plot/hand-out";
import type { TrayView } from "@/lib/plot/staff-view";

export interface TrayStonesProps extends HandOutActions {
  tray: TrayView;
  holders: readonly HolderOption[];
}

/** The stones of a tray, to be ticked, handed out and taken back. */
export function TrayStones({ tray, holders, handOut, takeBack }: TrayStonesProps) {
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const toggle = useCallback(
    (stoneId: string) =>
      setChosen((before) => {
        const next = new Set(before);
        if (!next.delete(stoneId)) next.add(stoneId);
        return next;
      }),
    [],
  );
  const picked = tray.stones.filter(({ stoneId }) => chosen.has(stoneId));
  const ids = (isOut: boolean) =>
    picked.filter(({ out }) => (out !== null) === isOut).map(({ stoneId }) => stoneId);
  return (
    <>
      <HandOutBar
        holders={holders}
        inTray={ids(false)}
        out={ids(true)}
        onDone={() => setChosen(new Set())}
        handOut={handOut}
        takeBack={takeBack}
      />
      <TrayStonesTable
        trayId={tray.trayId}
        trayName={tray.name}
        stones={tray.stones}
        chosen={chosen}
        onToggle={toggle}
      />
    </>
  );
}
