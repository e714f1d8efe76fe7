"use client";

import { memo, useMemo } from "react";
import classes from "@/components/debrief/debrief.module.css";
import { DebriefFigure } from "@/components/debrief/debrief-figure";
import { createDebriefWords, type DebriefRow } from "@/components/debrief/debrief-row";
import type { DebriefTools } from "@/components/debrief/debrief-tools";
import { GradesCompared } from "@/components/debrief/grades-compared";
import { listDebriefSources } from "@/components/debrief/list-debrief-sources";
import { OutcomeRows } from "@/components/debrief/outcome-rows";
import { PointsTable } from "@/components/debrief/points-table";
import { ReviewWords } from "@/components/debrief/review-words";
import { RowNotes } from "@/components/debrief/row-notes";
import type { OverlayLayer } from "@/components/plot-editor/plot-editor-props";
import { SolidFigure } from "@/components/solid-figure/solid-figure";
import { getSolid } from "@/lib/gem/build-solid";
import type { DebriefView } from "@/lib/plot/student-view";

interface DebriefRestProps {
  view: DebriefView;
  rows: readonly DebriefRow[];
  layers: readonly OverlayLayer[];
  isOwn: boolean;
  review: DebriefTools | undefined;
}

/** What stands below the diagram: what staff ruled and wrote, the solid, points, grades, what to practise; and the print. */
export const DebriefRest = memo(function DebriefRest(props: DebriefRestProps) {
  const { view, rows, layers, isOwn, review } = props;
  const { result, detail, stone } = view;
  const solid = useMemo(() => getSolid(stone.cut, stone.proportions), [stone.cut, stone.proportions]);
  const say = useMemo(() => createDebriefWords(view), [view]);
  const sources = useMemo(() => listDebriefSources(view, rows), [view, rows]);
  return (
    <>
      <div className="print-only">
        <DebriefFigure solid={solid} layers={layers} />
        <OutcomeRows
          rows={rows}
          highlightKey={null}
          onHighlight={() => {}}
          renderNotes={(row) => <RowNotes view={view} row={row} />}
        />
      </div>
      {review?.panel ?? <ReviewWords view={view} rows={rows} say={say} />}
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
    </>
  );
});
