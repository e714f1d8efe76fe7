"use client";

/**
 * A debrief: the plot and the reference over one another, what came of each mark, the points, the grades, what to
 * practise, and the sitting played back. Takes a `DebriefView`; the student's page and the staff's review use the same.
 */

import { Button, SegmentedControl } from "@mantine/core";
import { Printer } from "lucide-react";
import { type ReactNode, useDeferredValue, useMemo, useState } from "react";
import { buildDebriefLayers } from "@/components/debrief/build-debrief-layers";
import { buildReplayLayers } from "@/components/debrief/build-replay-layers";
import classes from "@/components/debrief/debrief.module.css";
import { DebriefRest } from "@/components/debrief/debrief-rest";
import { type DebriefRow, listDebriefRows } from "@/components/debrief/debrief-row";
import type { DebriefTools } from "@/components/debrief/debrief-tools";
import { findEchoWays, hasDecoyedEchoes, toEchoInput } from "@/components/debrief/find-echo-ways";
import { layAlike } from "@/components/debrief/lay-mark";
import { listDebriefSources } from "@/components/debrief/list-debrief-sources";
import { findOtherFit, layOtherwise, toLayingWords } from "@/components/debrief/other-fit";
import { OutcomeRows } from "@/components/debrief/outcome-rows";
import { ReplayBar } from "@/components/debrief/replay-bar";
import { ReplayEvents } from "@/components/debrief/replay-events";
import { insertNotes, listReplayFrames } from "@/components/debrief/replay-sitting";
import { RowNotes } from "@/components/debrief/row-notes";
import { useReplay } from "@/components/debrief/use-replay";
import { WouldFitNote } from "@/components/debrief/would-fit-note";
import { useEchoes } from "@/components/echoes/use-echoes";
import { PaperMenu } from "@/components/paper/paper-menu";
import { PlotEditor } from "@/components/plot-editor/plot-editor";
import { PageHeader, type PageHeaderProps } from "@/components/ui/page-header";
import { When } from "@/components/ui/when";
import { getSolid } from "@/lib/gem/build-solid";
import { findLoggedBursts } from "@/lib/plot/find-dotting";
import type { DebriefView } from "@/lib/plot/student-view";

export interface DebriefProps {
  view: DebriefView;
  /** The way back. */
  trail?: PageHeaderProps["trail"];
  /** Whether the reader is the one who plotted. */
  isOwn: boolean;
  /** Buttons of the page around: release, next student. */
  actions?: ReactNode;
  /** The tools of whoever reviews it, in place of what a student reads. */
  review?: DebriefTools;
}

type Mode = "compared" | "replay";

function Lead({ view }: { view: DebriefView }) {
  const { result, reference } = view;
  const scored = reference.marks.filter(({ optional }) => optional !== true).length;
  const found = new Set(result.found.map((one) => one.reference)).size;
  const facts = [
    `${found} of ${scored} found`,
    `${result.overlooked.length} overlooked`,
    result.strays.length === 1 ? "1 stray" : `${result.strays.length} strays`,
  ];
  return (
    <div className={classes.lead}>
      <p className={classes.total}>
        <span className={classes.totalNumber}>{result.total.toFixed(2)}</span> of 100 points
      </p>
      <p>{facts.join(" · ")}</p>
      <p>
        {view.exerciseTitle} · {view.studentName} ·{" "}
        {view.timedOut ? "handed in as the time ran out" : "handed in"} <When iso={view.handedInAt} />
      </p>
    </div>
  );
}

function ToleranceWords({ view }: { view: DebriefView }) {
  const widthMm = view.stone.measurementsMm?.[0];
  const inMm = (share: number) =>
    widthMm === undefined ? "" : ` (${(share * widthMm).toFixed(2)} mm on this stone)`;
  return (
    <p className="muted">
      A mark within {view.near} girdle widths{inMm(view.near)} of the reference’s is in the right place;
      beyond {view.far}
      {inMm(view.far)} it is not found. Both lines can be shown over the diagram. Reference{" "}
      {view.referenceVersion}, rubric {view.rubricVersion}, engine {view.detail.engineVersion}.
    </p>
  );
}

export function Debrief({ view, trail = [], isOwn, actions, review }: DebriefProps) {
  const { result, stone } = view;
  const [mode, setMode] = useState<Mode>("compared");
  const [highlightKey, setHighlightKey] = useState<string | null>(null);
  const [isRelaid, setRelaid] = useState(false);
  const [shownId, setShownId] = useState(view.sittingId);
  if (shownId !== view.sittingId) {
    // Another plot in place of this one: the diagram stays, what was chosen on it does not.
    setShownId(view.sittingId);
    setHighlightKey(null);
    setRelaid(false);
    setMode("compared");
  }
  const solid = useMemo(() => getSolid(stone.cut, stone.proportions), [stone.cut, stone.proportions]);
  const { echoes } = useEchoes(useMemo(() => (hasDecoyedEchoes(view) ? toEchoInput(view) : null), [view]));
  const ways = useMemo(() => findEchoWays(view, solid, echoes), [view, solid, echoes]);
  const rows = useMemo(() => listDebriefRows(view, ways), [view, ways]);
  // What lies below is drawn after what was asked for: the plot is on the screen first.
  const later = useDeferredValue(view);
  const laterRows = useDeferredValue(rows);
  const sources = useMemo(() => listDebriefSources(later, laterRows), [later, laterRows]);
  const { turnDeg } = result.alignment;
  const otherFit = findOtherFit(view);
  const layers = useMemo(
    () =>
      buildDebriefLayers(
        view,
        rows,
        isRelaid ? layOtherwise(view) : layAlike({ turnDeg, mirrored: false }),
        isOwn ? "Your plot" : "Plot",
        ways,
      ),
    [view, rows, ways, isRelaid, turnDeg, isOwn],
  );
  const laterLayers = useDeferredValue(layers);
  const laterReview = useDeferredValue(review);
  const frames = useMemo(
    () =>
      insertNotes(
        listReplayFrames(later.events, getSolid(later.stone.cut, later.stone.proportions)),
        later.notes,
        later.openedAt,
      ),
    [later],
  );
  const bursts = useMemo(() => findLoggedBursts(later.events, later.dotting), [later]);
  const replay = useReplay(frames);
  const replayMarks = replay.done === 0 ? undefined : frames[replay.done - 1]?.marks;
  const replayLayers = useMemo(
    () => buildReplayLayers(replayMarks ?? [], view.characteristics, solid),
    [replayMarks, view.characteristics, solid],
  );
  const isReplay = mode === "replay";
  const renderNotes = review?.renderNotes ?? ((row: DebriefRow) => <RowNotes view={view} row={row} />);

  return (
    <div className="page-wide">
      <PageHeader
        title={isOwn ? stone.label : `${stone.label}, ${view.studentName}`}
        trail={trail}
        lead={<Lead view={view} />}
        actions={
          <>
            {actions}
            <PaperMenu label="PDF" address={`/api/sittings/${view.sittingId}/debrief.pdf`} />
            <Button
              variant="outline"
              leftSection={<Printer size={16} aria-hidden="true" />}
              onClick={() => window.print()}
            >
              Print
            </Button>
          </>
        }
      />
      <div className={`${classes.live} no-print`}>
        <div className={classes.diagram}>
          {otherFit !== null && !isReplay && (
            <WouldFitNote fit={otherFit} isShown={isRelaid} onShow={setRelaid} />
          )}
          {turnDeg !== 0 && !isReplay && !isRelaid && (
            <p className="muted">
              The plot is shown {toLayingWords({ turnDeg, mirrored: false })}: that is how it fits the
              reference, and a stone held turned costs nothing in this exercise.
            </p>
          )}
          {result.suspectStone !== null && (
            <p>
              This plot reads better as stone <strong>{result.suspectStone}</strong>. Were two stones swapped?
            </p>
          )}
          <h2 className="visually-hidden">{isReplay ? "Replay" : "Plot and reference"}</h2>
          <PlotEditor
            key={`${mode} ${stone.label}`}
            mode="debrief"
            cut={stone.cut}
            proportions={stone.proportions}
            characteristics={view.characteristics}
            layers={isReplay ? replayLayers : layers}
            highlightId={highlightKey}
            onHighlight={setHighlightKey}
            hasOwnList
            toolBarEnd={
              <SegmentedControl
                aria-label="What the diagram shows"
                data={[
                  { value: "compared", label: "Compared" },
                  { value: "replay", label: "Replay" },
                ]}
                value={mode}
                onChange={(next) => setMode(next === "replay" ? "replay" : "compared")}
              />
            }
            note={isReplay && <ReplayBar replay={replay} bursts={bursts} />}
          />
        </div>
        {isReplay ? (
          <ReplayEvents replay={replay} />
        ) : (
          <OutcomeRows
            rows={rows}
            highlightKey={highlightKey}
            onHighlight={setHighlightKey}
            renderNotes={renderNotes}
          />
        )}
      </div>
      <div data-stale={later !== view || undefined} className={classes.later}>
        <DebriefRest
          view={later}
          rows={laterRows}
          layers={laterLayers}
          sources={sources}
          isOwn={isOwn}
          review={laterReview}
        />
      </div>
      <ToleranceWords view={view} />
    </div>
  );
}
