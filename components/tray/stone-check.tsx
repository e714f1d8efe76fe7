"use client";

import { Button, Select } from "@mantine/core";
import { useMemo, useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import { AidNote } from "@/components/tray/aid-note";
import { FeatureEditor, NOTHING_SEEN, readWeight } from "@/components/tray/feature-editor";
import classes from "@/components/tray/stone-check.module.css";
import { VerdictPanel } from "@/components/tray/verdict-panel";
import { ErrorNote } from "@/components/ui/error-note";
import { useRefresh } from "@/components/ui/use-refresh";
import { CUT_LABELS, type CutName } from "@/lib/gem/cut-name";
import type { TrayView } from "@/lib/plot/staff-view";
import type { StoneEvidence, StoneVerdict } from "@/lib/plot/stone-check";

export interface StoneCheckProps {
  tray: TrayView;
  /** What the label says, to begin with. */
  startStoneId: string | null;
  check: (input: {
    trayId: string;
    stoneId: string | null;
    evidence: StoneEvidence;
  }) => Promise<ActionResult<{ verdict: StoneVerdict }>>;
}

interface Answer {
  readonly verdict: StoneVerdict;
  readonly label: string | null;
  readonly features: number;
}

const NO_PROPORTIONS = {};

/** Which stone of the tray is this? Staff plot a few features and read the answer. */
export function StoneCheck({ tray, startStoneId, check }: StoneCheckProps) {
  const refresh = useRefresh();
  const cuts = useMemo(() => [...new Set(tray.stones.map(({ cut }) => cut))], [tray.stones]);
  const [stoneId, setStoneId] = useState(startStoneId);
  const [freeCut, setFreeCut] = useState<CutName>(cuts[0] ?? "round-brilliant");
  const [draft, setDraft] = useState(NOTHING_SEEN);
  const [answer, setAnswer] = useState<Answer | null>(null);
  const { run, pending, failure } = useAction(check);
  const labelled = tray.stones.find((stone) => stone.stoneId === stoneId);
  const like = labelled ?? tray.stones.find(({ cut }) => cut === freeCut);
  const cut = labelled?.cut ?? freeCut;
  const features = draft.marks.length;
  const ask = async () => {
    const evidence = {
      cut,
      marks: [...draft.marks],
      weightCt: readWeight(draft),
      isHeldByLandmark: draft.isHeldByLandmark,
    };
    const done = await run({ trayId: tray.trayId, stoneId, evidence });
    if (done === null) return;
    setAnswer({ verdict: done.value.verdict, label: labelled?.label ?? null, features });
    refresh();
  };
  return (
    <div className={classes.root}>
      <div className={classes.what}>
        <Select
          label="What the label says"
          placeholder="No label"
          data={tray.stones.map((stone) => ({ value: stone.stoneId, label: stone.label }))}
          clearable
          clearButtonProps={{ "aria-label": "No label" }}
          searchable
          value={stoneId}
          onChange={(next) => {
            setStoneId(next);
            setAnswer(null);
          }}
        />
        {labelled === undefined && (
          <Select
            label="Cut in hand"
            data={cuts.map((one) => ({ value: one, label: CUT_LABELS[one] }))}
            allowDeselect={false}
            value={freeCut}
            onChange={(next) => setFreeCut(cuts.find((one) => one === next) ?? freeCut)}
          />
        )}
      </div>
      <FeatureEditor
        key={`${cut} ${labelled?.stoneId ?? ""}`}
        cut={cut}
        proportions={like?.proportions ?? NO_PROPORTIONS}
        characteristics={tray.characteristics}
        draft={draft}
        onChange={(part) => setDraft((before) => ({ ...before, ...part }))}
      >
        <Button onClick={ask} loading={pending} disabled={features === 0}>
          Which stone is this?
        </Button>
        {failure !== null && <ErrorNote message={failure.message} faults={failure.faults} />}
        {answer !== null && <VerdictPanel {...answer} />}
        <AidNote />
      </FeatureEditor>
    </div>
  );
}
