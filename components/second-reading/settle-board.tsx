"use client";

import { Button, SegmentedControl, TextInput } from "@mantine/core";
import Link from "next/link";
import { useMemo, useState } from "react";
import { DebriefFigure } from "@/components/debrief/debrief-figure";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import { PlotEditor } from "@/components/plot-editor/plot-editor";
import {
  buildReadingLayers,
  toChoiceLabel,
  toDifferenceWords,
} from "@/components/second-reading/difference-words";
import classes from "@/components/second-reading/second-reading.module.css";
import { ErrorNote } from "@/components/ui/error-note";
import { PracticeNote } from "@/components/ui/practice-note";
import { useRefresh } from "@/components/ui/use-refresh";
import { getSolid } from "@/lib/gem/build-solid";
import {
  type Choice,
  ChoiceSchema,
  type ClosedReading,
  listChoices,
  type ReadingDifference,
  type Settling,
} from "@/lib/plot/second-reading";

export interface SettleBoardProps {
  reading: ClosedReading;
  referenceHref: string;
  settle: (input: {
    readonly baseVersion: number;
    readonly choices: Settling;
    readonly note: string;
  }) => Promise<ActionResult<{ version: number }>>;
}

function Figures({ reading }: { reading: ClosedReading }) {
  const { first, second, matched, named, ospa, gospa, secondByFirst, firstBySecond, turnDeg } =
    reading.comparison.figures;
  const percent = (share: number) => `${Math.round(share * 100)} %`;
  return (
    <p>
      {matched} marks in common, {named} of them under one name: {matched} of {first} of the reference and{" "}
      {matched} of {second} of the second reader. The engine finds {percent(secondByFirst)} of the reference
      in the second plot, and {percent(firstBySecond)} the other way. OSPA {ospa.toFixed(3)}, GOSPA{" "}
      {gospa.toFixed(3)} girdle widths.
      {turnDeg !== 0 && ` The second plot is laid on by a turn of ${turnDeg}°.`}
    </p>
  );
}

interface DifferenceRowProps {
  difference: ReadingDifference;
  number: number;
  words: string;
  choice: Choice;
  maySettle: boolean;
  isHighlighted: boolean;
  onHighlight: (key: string | null) => void;
  onChoose: (choice: Choice) => void;
}

function DifferenceRow(props: DifferenceRowProps) {
  const { difference, number, words, choice, maySettle, isHighlighted, onHighlight, onChoose } = props;
  return (
    <li
      className={classes.row}
      data-highlighted={isHighlighted}
      onPointerEnter={() => onHighlight(difference.key)}
      onPointerLeave={() => onHighlight(null)}
      onFocus={() => onHighlight(difference.key)}
      onBlur={() => onHighlight(null)}
    >
      <span>
        <strong>{number}</strong> {words}
      </span>
      {maySettle && (
        <SegmentedControl
          size="sm"
          className="no-print"
          aria-label={`What to do about ${number}`}
          data={listChoices(difference).map((one) => ({ value: one, label: toChoiceLabel(difference, one) }))}
          value={choice}
          onChange={(next) => onChoose(ChoiceSchema.parse(next))}
        />
      )}
    </li>
  );
}

/** Two readings over one another, what they differ in, and how each difference is settled into a new version. */
export function SettleBoard({ reading, referenceHref, settle }: SettleBoardProps) {
  const refresh = useRefresh();
  const { run, pending, failure } = useAction(settle);
  const [choices, setChoices] = useState<Settling>({});
  const [note, setNote] = useState("");
  const [highlightKey, setHighlightKey] = useState<string | null>(null);
  const { cut, proportions } = reading.body;
  const solid = useMemo(() => getSolid(cut, proportions), [cut, proportions]);
  const { differences } = reading.comparison;
  const layers = useMemo(() => buildReadingLayers(differences), [differences]);
  const numbered = differences.map((difference, index) => ({ difference, number: index + 1 }));
  const submit = async () => {
    const settled = await run({ baseVersion: reading.againstVersion, choices, note });
    if (settled !== null) refresh();
  };
  const list = (agrees: boolean) =>
    numbered
      .filter(({ difference }) => difference.agrees === agrees)
      .map(({ difference, number }) => (
        <DifferenceRow
          key={difference.key}
          difference={difference}
          number={number}
          words={toDifferenceWords(difference, solid)}
          choice={choices[difference.key] ?? "first"}
          maySettle={reading.maySettle && !agrees}
          isHighlighted={highlightKey === difference.key}
          onHighlight={setHighlightKey}
          onChoose={(choice) => setChoices((before) => ({ ...before, [difference.key]: choice }))}
        />
      ));
  const open = list(false);
  return (
    <>
      <div className="print-only">
        <DebriefFigure solid={solid} layers={layers} />
      </div>
      <div className={classes.board}>
        <div className="no-print">
          <PlotEditor
            mode="debrief"
            cut={cut}
            proportions={proportions}
            characteristics={reading.characteristics}
            layers={layers}
            highlightId={highlightKey}
            onHighlight={setHighlightKey}
            hasOwnList
          />
        </div>
        <section className={classes.rows} aria-labelledby="differences-title">
          <h2 id="differences-title">Differences</h2>
          <Figures reading={reading} />
          {open.length === 0 ? (
            <p>The two readings agree in everything.</p>
          ) : (
            <ul className={classes.rows}>{open}</ul>
          )}
          <details>
            <summary>What both agree in</summary>
            <ul className={classes.rows}>{list(true)}</ul>
          </details>
          <PracticeNote />
          {reading.maySettle && (
            <div className={`${classes.rows} no-print`}>
              <TextInput
                label="Note to the new version"
                description="Beside who settled it and how, which is noted by itself"
                maxLength={800}
                value={note}
                onChange={(event) => setNote(event.currentTarget.value)}
              />
              {failure !== null && (
                <ErrorNote
                  message={failure.message}
                  kept="Your choices are still here."
                  faults={failure.faults}
                />
              )}
              <div>
                <Button onClick={submit} loading={pending}>
                  Settle into version {reading.againstVersion + 1}
                </Button>
              </div>
            </div>
          )}
          {reading.settledVersion !== null && (
            <p role="status">
              Settled into version {reading.settledVersion} by {reading.settledByName}.{" "}
              <Link href={referenceHref}>See the reference and what a rescore would change</Link>
            </p>
          )}
        </section>
      </div>
    </>
  );
}
