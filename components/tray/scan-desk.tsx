"use client";

import { Button, SegmentedControl } from "@mantine/core";
import Link from "next/link";
import { useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import type { HandOutActions } from "@/components/tray/hand-out-bar";
import { EMPTY_HOLDER, findHolderName, readHolderDraft } from "@/components/tray/holder-draft";
import { HolderFields } from "@/components/tray/holder-fields";
import classes from "@/components/tray/scan-desk.module.css";
import { ScanField } from "@/components/tray/scan-field";
import { StatusBadge } from "@/components/ui/status-badge";
import { useRefresh } from "@/components/ui/use-refresh";
import type { HolderOption, ScannedStone } from "@/lib/plot/hand-out";

export interface ScanDeskProps extends HandOutActions {
  holders: readonly HolderOption[];
  scan: (text: string) => Promise<ActionResult<ScannedStone>>;
}

interface Line {
  readonly key: number;
  readonly stone: ScannedStone | null;
  readonly words: string;
  readonly isRefused: boolean;
  /** What puts it back as it was. */
  readonly undo: (() => Promise<ActionResult<unknown>>) | null;
}

const NO_ANSWER = "The server did not answer, so nothing was changed. Scan it again.";
const MOST_LINES = 30;

/** What one scan does: the stone is looked up, then handed out or taken back. */
async function follow(
  { scan, handOut, takeBack }: Pick<ScanDeskProps, "scan" | "handOut" | "takeBack">,
  text: string,
  to: { input: NonNullable<ReturnType<typeof readHolderDraft>>; name: string } | null,
): Promise<Omit<Line, "key">> {
  const refused = (words: string, stone: ScannedStone | null = null) => ({
    stone,
    words,
    isRefused: true,
    undo: null,
  });
  try {
    const found = await scan(text);
    if (!found.ok) return refused(`“${text.slice(0, 60)}” is on no stone’s label.`);
    const stone = found.value;
    if (to !== null) {
      const done = await handOut({ ...to.input, stoneIds: [stone.stoneId] });
      if (!done.ok) return refused(done.message, stone);
      return {
        stone,
        words: `handed to ${to.name}`,
        isRefused: false,
        undo: () => takeBack([stone.stoneId]),
      };
    }
    if (stone.out === null) return refused("is in its tray already.", stone);
    const done = await takeBack([stone.stoneId]);
    if (!done.ok) return refused(done.message, stone);
    return { stone, words: `taken back from ${stone.out.holder}`, isRefused: false, undo: null };
  } catch {
    return refused(NO_ANSWER);
  }
}

function LineRow({ line, onUndone }: { line: Line; onUndone: (key: number) => void }) {
  const { stone, words, isRefused, undo } = line;
  return (
    <li className={classes.line}>
      <StatusBadge tone={isRefused ? "bad" : "ready"}>
        {stone !== null && <strong>{stone.label} </strong>}
        {words}
      </StatusBadge>
      {stone !== null && (
        <span className={classes.links}>
          <span className="muted">
            {stone.trayName}, place {stone.position}
          </span>
          {!isRefused && undo === null && (
            <Link href={`/trays/${stone.trayId}/check?stone=${stone.stoneId}`}>Check which stone it is</Link>
          )}
          {undo !== null && (
            <Button
              size="compact-sm"
              variant="subtle"
              onClick={async () => {
                if ((await undo()).ok) onUndone(line.key);
              }}
            >
              Undo
            </Button>
          )}
        </span>
      )}
    </li>
  );
}

/** The desk at the end of a class: scan one label after the other, to take stones back or to hand them out. */
export function ScanDesk({ holders, scan, handOut, takeBack }: ScanDeskProps) {
  const refresh = useRefresh();
  const [isGiving, setGiving] = useState(false);
  const [draft, setDraft] = useState(EMPTY_HOLDER);
  const [lines, setLines] = useState<readonly Line[]>([]);
  const [waiting, setWaiting] = useState(0);
  const input = readHolderDraft(draft);
  const name = findHolderName(draft, holders);
  const isReady = !isGiving || (input !== null && name !== null);
  const onScan = async (text: string) => {
    setWaiting((before) => before + 1);
    const to = isGiving && input !== null && name !== null ? { input, name } : null;
    const line = await follow({ scan, handOut, takeBack }, text, to);
    setLines((before) => [{ key: (before[0]?.key ?? 0) + 1, ...line }, ...before].slice(0, MOST_LINES));
    setWaiting((before) => before - 1);
    refresh();
  };
  const onUndone = (key: number) => {
    setLines((before) => before.filter((line) => line.key !== key));
    refresh();
  };
  return (
    <section className={`${classes.root} no-print`} aria-labelledby="desk-title">
      <div className={classes.head}>
        <h2 id="desk-title">At the desk</h2>
        <SegmentedControl
          aria-label="What a scan does"
          data={[
            { value: "back", label: "Take back" },
            { value: "out", label: "Hand out" },
          ]}
          value={isGiving ? "out" : "back"}
          onChange={(value) => setGiving(value === "out")}
        />
      </div>
      {isGiving && (
        <HolderFields
          draft={draft}
          holders={holders}
          onChange={(part) => setDraft((before) => ({ ...before, ...part }))}
        />
      )}
      {isReady ? (
        <ScanField
          onScan={onScan}
          busy={waiting > 0}
          label={isGiving ? `Scan a label: it is handed to ${name}` : "Scan a label: it is taken back"}
        />
      ) : (
        <p className="muted">Choose a student or name a seat; then each label that is scanned goes there.</p>
      )}
      <ul className={classes.lines} aria-live="polite" aria-label="What was scanned">
        {lines.map((line) => (
          <LineRow key={line.key} line={line} onUndone={onUndone} />
        ))}
      </ul>
    </section>
  );
}
