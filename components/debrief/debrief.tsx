"use client";

/**
 * A debrief: the plot and the reference over one another, what came of each mark, the points, the grades, what to
 * practise, and the sitting played back. Takes a `DebriefView`; the student's page and the staff's review use the same.
 */

import { SegmentedControl } from "@mantine/core";
import { type ReactNode, useDeferredValue, useMemo, useState } from "react";
import classes from "@/components/debrief/debrief.module.css";
import { DebriefLead, DebriefPapers, ToleranceWords } from "@/components/debrief/debrief-lead";
import { DebriefRest } from "@/components/debrief/debrief-rest";
import type { DebriefRow } from "@/components/debrief/debrief-row";
import type { DebriefTools } from "@/components/debrief/debrief-tools";
import { LayingNotes } from "@/components/debrief/laying-notes";
import { OutcomeRows } from "@/components/debrief/outcome-rows";
import { ReplayBar } from "@/components/debrief/replay-bar";
import { ReplayEvents } from "@/components/debrief/replay-events";
import { RowNotes } from "@/components/debrief/row-notes";
import { useCompared } from "@/components/debrief/use-compared";
import { useSittingReplay } from "@/components/debrief/use-sitting-replay";
import { PlotEditor } from "@/components/plot-editor/plot-editor";
import { PageHeader, type PageHeaderProps } from "@/components/ui/page-header";
import type { DebriefView } from "@/lib/plot/student-view";

export interface DebriefProps {
  view: DebriefView;
  /** The way back. */
  trail?: PageHeaderProps["trail"];
  /** Whether the reader is the one who plotted. */
  isOwn: boolean;
  /** Buttons of the page around: release, next student. */
  actions?: ReactNode;
  /** Above the diagram: which of several attempts it is. */
  note?: ReactNode;
  /** The tools of whoever reviews it, in place of what a student reads. */
  review?: DebriefTools;
}

type Mode = "compared" | "replay";

/** What is chosen on the diagram; another plot in place of the shown one begins anew. */
function useChoices(sittingId: string) {
  const [mode, setMode] = useState<Mode>("compared");
  const [highlightKey, setHighlightKey] = useState<string | null>(null);
  const [isRelaid, setRelaid] = useState(false);
  const [shownId, setShownId] = useState(sittingId);
  if (shownId !== sittingId) {
    setShownId(sittingId);
    setHighlightKey(null);
    setRelaid(false);
    setMode("compared");
  }
  return { mode, setMode, highlightKey, setHighlightKey, isRelaid, setRelaid };
}

function ModeSwitch({ mode, onMode }: { mode: Mode; onMode: (mode: Mode) => void }) {
  return (
    <SegmentedControl
      aria-label="What the diagram shows"
      data={[
        { value: "compared", label: "Compared" },
        { value: "replay", label: "Replay" },
      ]}
      value={mode}
      onChange={(next) => onMode(next === "replay" ? "replay" : "compared")}
    />
  );
}

function SuspectStone({ label }: { label: string | null }) {
  if (label === null) return null;
  return (
    <p>
      This plot reads better as stone <strong>{label}</strong>. Were two stones swapped?
    </p>
  );
}

/** What is drawn after what was asked for, as one: all of the plot before, or all of the shown one. */
function useLater(
  view: DebriefView,
  compared: ReturnType<typeof useCompared>,
  review: DebriefTools | undefined,
) {
  const now = useMemo(() => ({ view, ...compared, review }), [view, compared, review]);
  // A review is about the diagram first: there the rest waits from the beginning. A student's page comes whole.
  const later = useDeferredValue<typeof now | null>(now, review === undefined ? now : null);
  return { later, isStale: later !== null && later.view !== view };
}

export function Debrief({ view, trail = [], isOwn, actions, note, review }: DebriefProps) {
  const { result, stone } = view;
  const { mode, setMode, highlightKey, setHighlightKey, isRelaid, setRelaid } = useChoices(view.sittingId);
  const compared = useCompared(view, isRelaid, isOwn ? "Your plot" : "Plot");
  const { later, isStale } = useLater(view, compared, review);
  const { replay, bursts, layers: replayLayers } = useSittingReplay(later?.view ?? view);
  const isReplay = mode === "replay";
  const renderNotes = review?.renderNotes ?? ((row: DebriefRow) => <RowNotes view={view} row={row} />);

  return (
    <div className="page-wide">
      <PageHeader
        title={isOwn ? stone.label : `${stone.label}, ${view.studentName}`}
        trail={trail}
        lead={<DebriefLead view={view} />}
        actions={
          <>
            {actions}
            <DebriefPapers sittingId={view.sittingId} />
          </>
        }
      />
      <div className={`${classes.live} no-print`}>
        <div className={classes.diagram}>
          {note}
          {!isReplay && <LayingNotes view={view} isOwn={isOwn} isRelaid={isRelaid} onRelaid={setRelaid} />}
          <SuspectStone label={result.suspectStone} />
          <h2 className="visually-hidden">{isReplay ? "Replay" : "Plot and reference"}</h2>
          <PlotEditor
            key={mode}
            mode="debrief"
            cut={stone.cut}
            proportions={stone.proportions}
            characteristics={view.characteristics}
            layers={isReplay ? replayLayers : compared.layers}
            highlightId={highlightKey}
            onHighlight={setHighlightKey}
            hasOwnList
            toolBarEnd={<ModeSwitch mode={mode} onMode={setMode} />}
            note={isReplay && <ReplayBar replay={replay} bursts={bursts} />}
          />
        </div>
        {isReplay ? (
          <ReplayEvents replay={replay} />
        ) : (
          <OutcomeRows
            rows={compared.rows}
            highlightKey={highlightKey}
            onHighlight={setHighlightKey}
            renderNotes={renderNotes}
          />
        )}
      </div>
      <div data-stale={isStale || undefined} className={classes.later}>
        {later !== null && <DebriefRest {...later} isOwn={isOwn} />}
      </div>
      <ToleranceWords view={view} />
    </div>
  );
}
