"use client";

import { SegmentedControl } from "@mantine/core";
import { type ReactNode, useMemo, useState } from "react";
import { DebriefFigure } from "@/components/debrief/debrief-figure";
import { buildEvidenceLayers, toSuggestionSign } from "@/components/evidence/build-evidence-layers";
import classes from "@/components/evidence/evidence.module.css";
import { SuggestionCard } from "@/components/evidence/suggestion-card";
import type { ActionResult } from "@/components/forms/action-result";
import { PlotEditor } from "@/components/plot-editor/plot-editor";
import { EVIDENCE_THRESHOLD_WORDS } from "@/lib/agreement/judge-cluster";
import type { StoneEvidence } from "@/lib/agreement/stone-evidence";
import { getSolid } from "@/lib/gem/build-solid";
import { locatePoint } from "@/lib/gem/locate-point";
import type { StoneView } from "@/lib/plot/staff-view";

export interface StoneEvidenceBoardProps {
  stone: StoneView;
  evidence: StoneEvidence;
  userId: string;
  dismiss: (key: string) => Promise<ActionResult>;
  /** How often each reference mark is found. */
  detection: ReactNode;
}

type Shown = "density" | "singles";

function SuggestionsIntro({ evidence }: { evidence: StoneEvidence }) {
  const { suggestions, dismissed } = evidence;
  return (
    <>
      {suggestions.length === 0 && (
        <p>No place piles up enough strays to suggest anything. {EVIDENCE_THRESHOLD_WORDS}</p>
      )}
      {dismissed > 0 && (
        <p className="muted">
          {dismissed === 1 ? "One place is" : `${dismissed} places are`} set aside; it comes back once half as
          many students again, and at least three more, have marked it.
        </p>
      )}
    </>
  );
}

/** Every student's first plot of a stone over its reference, where strays pile up, and what is overlooked. */
export function StoneEvidenceBoard({ stone, evidence, userId, dismiss, detection }: StoneEvidenceBoardProps) {
  const [shown, setShown] = useState<Shown>("density");
  const [highlightKey, setHighlightKey] = useState<string | null>(null);
  const { cut, proportions } = stone.body;
  const solid = useMemo(() => getSolid(cut, proportions), [cut, proportions]);
  const layers = useMemo(() => {
    const other: Shown = shown === "density" ? "singles" : "density";
    return buildEvidenceLayers(evidence, stone.reference)
      .filter(({ id }) => id !== other)
      .map((layer) => (layer.id === shown ? { ...layer, isShown: true } : layer));
  }, [evidence, stone.reference, shown]);
  const { suggestions, singlesOf } = evidence;
  return (
    <>
      <div className="print-only">
        <DebriefFigure solid={solid} layers={layers} />
      </div>
      <div className={classes.board}>
        <div className={`${classes.diagram} no-print`}>
          <PlotEditor
            key={shown}
            mode="debrief"
            cut={cut}
            proportions={proportions}
            characteristics={stone.characteristics}
            layers={layers}
            highlightId={highlightKey}
            onHighlight={setHighlightKey}
            hasOwnList
            toolBarEnd={
              <SegmentedControl
                aria-label="How students’ marks are shown"
                data={[
                  { value: "density", label: "Density" },
                  { value: "singles", label: "Single marks" },
                ]}
                value={shown}
                onChange={(next) => setShown(next === "singles" ? "singles" : "density")}
              />
            }
          />
          <p className="muted">
            {shown === "density"
              ? "A disc’s area says how many students marked there, each counted once. "
              : `The marks of the last ${singlesOf} students to hand in: solid where found, dotted where stray. `}
            A plot that was held turned is laid on the reference by the turn that it was scored with.
          </p>
        </div>
        <section aria-labelledby="places-title" className={classes.places}>
          <h3 id="places-title">Places that many mark and the reference does not</h3>
          <SuggestionsIntro evidence={evidence} />
          <ul className={classes.cards}>
            {suggestions.map((suggestion, index) => (
              <SuggestionCard
                key={suggestion.key}
                suggestion={suggestion}
                sign={toSuggestionSign(index)}
                place={locatePoint(solid, suggestion.view, suggestion.at).words}
                stone={stone}
                userId={userId}
                isHighlighted={highlightKey === suggestion.key}
                onHighlight={setHighlightKey}
                dismiss={dismiss}
              />
            ))}
          </ul>
          {suggestions.length > 0 && <p className="muted">{EVIDENCE_THRESHOLD_WORDS}</p>}
          {detection}
        </section>
      </div>
    </>
  );
}
