"use client";

import { useEffect, useRef, useState } from "react";
import { type CharacteristicsByName, toSubjectLabel } from "@/components/plot-editor/subject-words";
import { type Editor, useEditorState } from "@/components/plot-editor/use-editor";
import { type EditorMark, getSubject } from "@/lib/editor/drawn-mark";
import { getMiddle } from "@/lib/editor/measure-shape";
import { findMarkNumber, listMarks, type PlotDocument } from "@/lib/editor/plot-document";
import type { Solid } from "@/lib/gem/build-solid";
import { locatePoint } from "@/lib/gem/locate-point";

interface ChangeWordsProps {
  readonly editor: Editor;
  readonly solid: Solid;
  readonly characteristics: CharacteristicsByName;
}

/** The first thing that differs between two documents, in words; empty when nothing does. */
function describeChange(
  before: PlotDocument<EditorMark>,
  after: PlotDocument<EditorMark>,
  { solid, characteristics }: Omit<ChangeWordsProps, "editor">,
): string {
  const toLabel = (mark: EditorMark) => toSubjectLabel(getSubject(mark), characteristics);
  for (const mark of listMarks(after)) {
    const old = before.byId.get(mark.id)?.mark;
    if (old === mark) continue;
    const { words } = locatePoint(solid, mark.view, getMiddle(mark.shape));
    const number = findMarkNumber(after, mark.id);
    const what = `Mark ${number}, ${toLabel(mark)}`;
    if (old === undefined) return `${what}, placed: ${mark.view}, ${words}`;
    return old.shape === mark.shape ? `${what}, changed` : `${what}, now ${words}`;
  }
  for (const mark of listMarks(before)) {
    if (!after.byId.has(mark.id)) return `Mark ${findMarkNumber(before, mark.id)}, ${toLabel(mark)}, removed`;
  }
  return "";
}

/** Says each change of the plot to a screen reader. */
export function ChangeWords({ editor, solid, characteristics }: ChangeWordsProps) {
  const document = useEditorState(editor, (state) => state.document);
  const before = useRef(document);
  const [words, setWords] = useState("");
  useEffect(() => {
    if (before.current !== document) {
      setWords(describeChange(before.current, document, { solid, characteristics }));
      before.current = document;
    }
  }, [document, solid, characteristics]);
  return (
    <p className="visually-hidden" aria-live="polite" data-testid="change-words">
      {words}
    </p>
  );
}
