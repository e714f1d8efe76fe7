"use client";

import { memo, useEffect, useRef } from "react";
import { MarkDetails } from "@/components/plot-editor/mark-details";
import { MarkSign } from "@/components/plot-editor/mark-sign";
import classes from "@/components/plot-editor/marks-table.module.css";
import {
  type CharacteristicsByName,
  toStyleName,
  toSubjectLabel,
} from "@/components/plot-editor/subject-words";
import { type Editor, useEditorState } from "@/components/plot-editor/use-editor";
import { type EditorMark, getSubject, isDecoy } from "@/lib/editor/drawn-mark";
import type { EditorMode } from "@/lib/editor/editor-command";
import { getMiddle } from "@/lib/editor/measure-shape";
import type { Solid } from "@/lib/gem/build-solid";
import { locatePoint } from "@/lib/gem/locate-point";
import type { PlottedMark, ReferenceMark } from "@/lib/plot/mark";
import type { Notation } from "@/lib/plot/notation";

interface MarkRowProps {
  readonly editor: Editor;
  readonly solid: Solid;
  readonly mark: EditorMark;
  readonly number: number;
  readonly mode: EditorMode;
  readonly readOnly: boolean;
  readonly onRemoved: () => void;
  readonly characteristics: CharacteristicsByName;
  readonly notation: Notation;
}

const STEPS = [1, 2, 3, 4, 5];

/** Confidence as five small steps, read as "confidence 4 of 5". */
function ConfidenceSteps({ confidence }: { readonly confidence: number | undefined }) {
  if (confidence === undefined) return <span className={classes.faint}>not rated</span>;
  return (
    <span className={classes.steps} role="img" aria-label={`confidence ${confidence} of 5`}>
      {STEPS.map((step) => (
        <i key={step} data-on={step <= confidence || undefined} />
      ))}
    </span>
  );
}

function BenchFacts({ mark }: { readonly mark: PlottedMark }) {
  return (
    <>
      <ConfidenceSteps confidence={mark.confidence} />
      <span className={classes.faint}>{mark.proofs?.join(", ") ?? ""}</span>
    </>
  );
}

function ReferenceFacts({ mark }: { readonly mark: ReferenceMark }) {
  const facts = [
    mark.depth === undefined ? null : `depth ${mark.depth}`,
    mark.decidesGrade ? "decides grade" : null,
    mark.optional ? "optional" : null,
  ].filter((fact) => fact !== null);
  return (
    <>
      <span>weight {mark.weight ?? 1}</span>
      <span className={classes.faint}>{facts.join(", ")}</span>
    </>
  );
}

/** Scrolls the table, and nothing else, until the row and what is opened beneath it are seen. */
function showWithin(row: HTMLTableRowElement): void {
  const box = row.closest<HTMLElement>("[data-scrolls]");
  if (box === null) return;
  const head = row.closest("table")?.tHead?.offsetHeight ?? 0;
  const opened = row.nextElementSibling as HTMLElement | null;
  const bottom = row.offsetTop + row.offsetHeight + (opened?.offsetHeight ?? 0);
  const lowest = row.offsetTop - head;
  const highest = bottom - box.clientHeight;
  if (box.scrollTop > lowest || highest > lowest) box.scrollTop = lowest;
  else if (box.scrollTop < highest) box.scrollTop = highest;
}

/** One mark in the table: number, what, where, and what is known of it; opened when selected. */
export const MarkRow = memo(function MarkRow(props: MarkRowProps) {
  const { editor, solid, mark, number, mode, readOnly, characteristics, notation } = props;
  const isSelected = useEditorState(editor, (state) => state.selectedId === mark.id);
  const isHighlighted = useEditorState(editor, (state) => state.highlightedId === mark.id);
  const row = useRef<HTMLTableRowElement>(null);
  const subject = getSubject(mark);
  const label = toSubjectLabel(subject, characteristics);
  const { words } = locatePoint(solid, mark.view, getMiddle(mark.shape));
  useEffect(() => {
    if (isSelected && row.current !== null) showWithin(row.current);
  }, [isSelected]);
  const toggle = () => editor.dispatch({ kind: "select", id: isSelected ? null : mark.id });
  return (
    <>
      <tr
        ref={row}
        className={classes.row}
        data-selected={isSelected || undefined}
        data-highlighted={isHighlighted || undefined}
        onPointerEnter={() => editor.dispatch({ kind: "highlight", id: mark.id })}
        onPointerLeave={() => editor.dispatch({ kind: "highlight", id: null })}
      >
        <td className={classes.number}>
          <MarkSign style={notation[toStyleName(subject, characteristics)]} text={String(number)} />
        </td>
        <th scope="row" className={classes.what}>
          <button
            type="button"
            className={classes.open}
            aria-expanded={isSelected}
            aria-label={`Mark ${number}, ${label}, ${mark.view}, ${words}`}
            data-mark-id={mark.id}
            onClick={toggle}
            onFocus={() => editor.dispatch({ kind: "highlight", id: mark.id })}
            onBlur={() => editor.dispatch({ kind: "highlight", id: null })}
          >
            <span>
              <span className={classes.name}>{label}</span> <span className={classes.faint}>{mark.view}</span>
            </span>
            <span className={classes.faint}>{words}</span>
          </button>
        </th>
        <td className={classes.facts}>
          {mode === "bench" && !isDecoy(mark) && <BenchFacts mark={mark} />}
          {mode === "reference" && !isDecoy(mark) && <ReferenceFacts mark={mark} />}
        </td>
      </tr>
      {isSelected && !readOnly && (
        <tr className={classes.opened}>
          <td colSpan={3}>
            <MarkDetails
              editor={editor}
              mark={mark}
              mode={mode}
              characteristics={characteristics}
              onRemoved={props.onRemoved}
            />
          </td>
        </tr>
      )}
    </>
  );
});
