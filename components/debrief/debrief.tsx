"use client";

/**
 * A debrief: the plot and the reference over one another, what came of each mark, the points, the grades, what to
 * practise, and the sitting played back. Takes a `DebriefView`; the student's page and the staff's review use the same.
 */

import { Button, SegmentedControl } from "@mantine/core";
import { Printer } from "lucide-react";
import { type ReactNode, useMemo, useState } from "react";
import { buildDebriefLayers } from "@/components/debrief/build-debrief-layers";
import { buildReplayLayers } from "@/components/debrief/build-replay-layers";
import classes from "@/components/debrief/debrief.module.css";
import { DebriefFigure } from "@/components/debrief/debrief-figure";
import { createDebriefWords, type DebriefRow, listDebriefRows } from "@/components/debrief/debrief-row";
import { findEchoWays, hasDecoyedEchoes, toEchoInput } from "@/components/debrief/find-echo-ways";
import { GradesCompared } from "@/components/debrief/grades-compared";
import { listDebriefSources } from "@/components/debrief/list-debrief-sources";
import { OutcomeRows } from "@/components/debrief/outcome-rows";
import { PointsTable } from "@/components/debrief/points-table";
import { ReplayBar } from "@/components/debrief/replay-bar";
import { ReplayEvents } from "@/components/debrief/replay-events";
import { insertNotes, listReplayFrames } from "@/components/debrief/replay-sitting";
import { ReviewWords } from "@/components/debrief/review-words";
import { RowNotes } from "@/components/debrief/row-notes";
import { useReplay } from "@/components/debrief/use-replay";
import { toLayingWords, WouldFitNote } from "@/components/debrief/would-fit-note";
import { useEchoes } from "@/components/echoes/use-echoes";
import { PaperMenu } from "@/components/paper/paper-menu";
import { PlotEditor } from "@/components/plot-editor/plot-editor";
import { SolidFigure } from "@/components/solid-figure/solid-figure";
import { PageHeader, type PageHeaderProps } from "@/components/ui/page-header";
import { When } from "@/components/ui/when";
import { getSolid } from "@/lib/gem/build-solid";
import { findLoggedBursts } from "@/lib/plot/find-dotting";
import type { GradedProperty } from "@/lib/plot/grades";
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

export interface DebriefTools {
  renderNotes: (row: DebriefRow) => ReactNode;
  renderGradeTool: (property: GradedProperty) => ReactNode;
  /** Overrules and comments on the whole. */
  panel: ReactNode;
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
  const { result, detail, stone } = view;
  const [mode, setMode] = useState<Mode>("compared");
  const [highlightKey, setHighlightKey] = useState<string | null>(null);
  const [isRelaid, setRelaid] = useState(false);
  const solid = useMemo(() => getSolid(stone.cut, stone.proportions), [stone.cut, stone.proportions]);
  const { echoes } = useEchoes(useMemo(() => (hasDecoyedEchoes(view) ? toEchoInput(view) : null), [view]));
  const ways = useMemo(() => findEchoWays(view, solid, echoes), [view, solid, echoes]);
  const rows = useMemo(() => listDebriefRows(view, ways), [view, ways]);
  const sources = useMemo(() => listDebriefSources(view, rows), [view, rows]);
  const say = useMemo(() => createDebriefWords(view), [view]);
  const { wouldFit, turnDeg } = result.alignment;
  const laying = isRelaid && wouldFit !== null ? wouldFit : { turnDeg, mirrored: false };
  const layers = useMemo(
    () =>
      buildDebriefLayers(
        view,
        rows,
        { turnDeg: laying.turnDeg, mirrored: laying.mirrored },
        isOwn ? "Your plot" : "Plot",
        ways,
      ),
    [view, rows, ways, laying.turnDeg, laying.mirrored, isOwn],
  );
  const frames = useMemo(
    () => insertNotes(listReplayFrames(view.events, solid), view.notes, view.openedAt),
    [view.events, view.notes, view.openedAt, solid],
  );
  const bursts = useMemo(() => findLoggedBursts(view.events, view.dotting), [view.events, view.dotting]);
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
        title={stone.label}
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
      <div className="print-only">
        <DebriefFigure solid={solid} layers={layers} />
        <OutcomeRows
          rows={rows}
          highlightKey={null}
          onHighlight={() => {}}
          renderNotes={(row) => <RowNotes view={view} row={row} />}
        />
      </div>
      <div className={`${classes.live} no-print`}>
        <div className={classes.diagram}>
          {wouldFit !== null && !isReplay && (
            <WouldFitNote wouldFit={wouldFit} isShown={isRelaid} onShow={setRelaid} />
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
            key={mode}
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
      {review?.panel ?? <ReviewWords view={view} say={say} />}
      <div className={classes.sections}>
        {view.reference.marks.length > 0 && (
          <section className="no-print" aria-labelledby="solid-title">
            <h2 id="solid-title">The reference in the solid</h2>
            <SolidFigure solid={solid} refractiveIndex={stone.refractiveIndex} sources={sources} />
          </section>
        )}
        <PointsTable result={result} say={say} />
        <GradesCompared view={view} renderTool={review?.renderGradeTool} />
        <section aria-labelledby="practise-title">
          <h2 id="practise-title">{isOwn ? "What to do differently next time" : "What to practise"}</h2>
          {detail.practise.length === 0 ? (
            <p className="muted">Nothing in this plot asks for it.</p>
          ) : (
            <ul className={classes.practise}>
              {detail.practise.map((sentence) => (
                <li key={sentence}>{say(sentence)}</li>
              ))}
            </ul>
          )}
        </section>
      </div>
      <ToleranceWords view={view} />
    </div>
  );
}
