"use client";

import { SegmentedControl, Select } from "@mantine/core";
import { useMemo, useState } from "react";
import { buildDebriefLayers } from "@/components/debrief/build-debrief-layers";
import { listDebriefRows } from "@/components/debrief/debrief-row";
import { layAlike } from "@/components/debrief/lay-mark";
import { PlotEditor } from "@/components/plot-editor/plot-editor";
import {
  listPointPairs,
  pairOutcomes,
  scoreExample,
  toExampleView,
} from "@/components/rubric/compare-outcomes";
import classes from "@/components/rubric/rubric-editor.module.css";
import { resolveTerms } from "@/lib/plot/exercise-terms";
import { toSignedPoints } from "@/lib/plot/rescore";
import type { RubricBench, RubricExample } from "@/lib/plot/rescore-view";
import type { Rubric } from "@/lib/plot/rubric";

type Side = "before" | "after";

function useComparison(example: RubricExample, terms: RubricBench["terms"], before: Rubric, after: Rubric) {
  const resolved = useMemo(() => resolveTerms(terms), [terms]);
  const was = useMemo(() => {
    const scored = scoreExample(example, before, resolved);
    return { rubric: before, scored, view: toExampleView(example, before, resolved, scored) };
  }, [example, before, resolved]);
  const is = useMemo(() => {
    const scored = scoreExample(example, after, resolved);
    return { rubric: after, scored, view: toExampleView(example, after, resolved, scored) };
  }, [example, after, resolved]);
  return { was, is };
}

const toPointsText = (points: number) => points.toFixed(2).replace("-", "−");

function PointsCompared({ pairs }: { pairs: ReturnType<typeof listPointPairs> }) {
  const total = pairs.at(-1);
  const row = ({ what, before, after }: (typeof pairs)[number]) => (
    <tr key={what} data-changed={before.toFixed(2) !== after.toFixed(2)}>
      <th scope="row">{what}</th>
      <td className={classes.points}>{toPointsText(before)}</td>
      <td className={classes.points}>{toPointsText(after)}</td>
      <td className={classes.points}>{toSignedPoints(Math.round(after * 100) - Math.round(before * 100))}</td>
    </tr>
  );
  return (
    <table className={classes.table} aria-label="Points of the example">
      <thead>
        <tr>
          <th scope="col">Points</th>
          <th scope="col" className={classes.points}>
            In force
          </th>
          <th scope="col" className={classes.points}>
            Changed
          </th>
          <th scope="col" className={classes.points}>
            Difference
          </th>
        </tr>
      </thead>
      <tbody>{pairs.slice(0, -1).map(row)}</tbody>
      {total !== undefined && <tfoot>{row(total)}</tfoot>}
    </table>
  );
}

function MarksCompared({ pairs }: { pairs: ReturnType<typeof pairOutcomes> }) {
  return (
    <table className={classes.table} aria-label="Marks of the example">
      <thead>
        <tr>
          <th scope="col">Mark</th>
          <th scope="col">In force</th>
          <th scope="col">Changed</th>
        </tr>
      </thead>
      <tbody>
        {pairs.map(({ key, title, place, before, after, isChanged }) => (
          <tr key={key} data-changed={isChanged}>
            <th scope="row">
              {title}
              <span className={classes.small}>{place}</span>
            </th>
            <td>{before}</td>
            <td>{after}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface ExampleProps {
  example: RubricExample;
  terms: RubricBench["terms"];
  before: Rubric;
  after: Rubric;
}

function ExampleCompared({ example, terms, before, after }: ExampleProps) {
  const [side, setSide] = useState<Side>("after");
  const { was, is } = useComparison(example, terms, before, after);
  const { view } = side === "before" ? was : is;
  const layers = useMemo(
    () =>
      buildDebriefLayers(
        view,
        listDebriefRows(view),
        layAlike({ turnDeg: view.result.alignment.turnDeg, mirrored: false }),
        "Plot",
      ),
    [view],
  );
  return (
    <>
      <PointsCompared pairs={listPointPairs(was, is)} />
      <PlotEditor
        mode="debrief"
        cut={example.stone.cut}
        proportions={example.stone.proportions}
        characteristics={view.characteristics}
        layers={layers}
        hasOwnList
        toolBarEnd={
          <SegmentedControl
            aria-label="Which rubric the diagram shows"
            data={[
              { value: "before", label: "In force" },
              { value: "after", label: "Changed" },
            ]}
            value={side}
            onChange={(next) => setSide(next === "before" ? "before" : "after")}
          />
        }
      />
      <MarksCompared pairs={pairOutcomes(was.view, is.view)} />
    </>
  );
}

export interface RubricExamplePanelProps {
  bench: RubricBench;
  /** What is typed now, the last that could be scored by. */
  after: Rubric;
  onChoose: (sittingId: string) => void;
}

/** A real plot of the exercise, scored by the rubric in force and by the one that is typed. */
export function RubricExamplePanel({ bench, after, onChoose }: RubricExamplePanelProps) {
  const { example, plots, terms, rubric } = bench;
  return (
    <section className={classes.example} aria-label="Example">
      <h2>On a real plot</h2>
      {example === null ? (
        <p className="muted">
          Nothing is handed in yet. Once it is, one of the plots shows here what each number does.
        </p>
      ) : (
        <>
          <Select
            label="Plot"
            description="Scored in this browser, by the newest reference; nothing is kept."
            searchable
            allowDeselect={false}
            data={plots.map(({ sittingId, studentName, stoneLabel }) => ({
              value: sittingId,
              label: `${studentName}, ${stoneLabel}`,
            }))}
            value={example.sittingId}
            onChange={(sittingId) => sittingId !== null && onChoose(sittingId)}
          />
          <ExampleCompared
            key={example.sittingId}
            example={example}
            terms={terms}
            before={rubric}
            after={after}
          />
        </>
      )}
    </section>
  );
}
