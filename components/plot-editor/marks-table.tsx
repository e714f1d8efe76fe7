"use client";

import { type KeyboardEvent, memo, useCallback, useRef } from "react";
import { MarkRow } from "@/components/plot-editor/mark-row";
import classes from "@/components/plot-editor/marks-table.module.css";
import type { CharacteristicsByName } from "@/components/plot-editor/subject-words";
import { type Editor, useEditorState } from "@/components/plot-editor/use-editor";
import type { EditorMode } from "@/lib/editor/editor-command";
import { findMarkCommand } from "@/lib/editor/editor-commands";
import { listMarks } from "@/lib/editor/plot-document";
import type { Solid } from "@/lib/gem/build-solid";
import type { Notation } from "@/lib/plot/notation";

interface MarksTableProps {
  readonly editor: Editor;
  readonly solid: Solid;
  readonly mode: EditorMode;
  readonly readOnly: boolean;
  readonly characteristics: CharacteristicsByName;
  readonly notation: Notation;
}

/** All marks: number, characteristic, where in words, and what is known of each. Everything the canvas can do. */
export const MarksTable = memo(function MarksTable(props: MarksTableProps) {
  const { editor, solid, mode, readOnly, characteristics, notation } = props;
  const document = useEditorState(editor, (state) => state.document);
  const heading = useRef<HTMLHeadingElement>(null);
  const onRemoved = useCallback(() => heading.current?.focus(), []);
  const marks = listMarks(document);
  // The selected mark's own keys work here as they do on a view, save where a text is being typed.
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    if ((event.target as HTMLElement).matches("input:not([type=radio]):not([type=checkbox]), textarea"))
      return;
    const command = readOnly ? null : findMarkCommand(event, mode);
    if (command === null) return;
    event.preventDefault();
    for (const action of command.effect({ state: editor.getState(), mode })) editor.dispatch(action);
  };
  return (
    <section className={classes.section} aria-label="Table of marks" onKeyDown={onKeyDown}>
      <h2 className={classes.heading} ref={heading} tabIndex={-1}>
        Marks <span className={classes.count}>{marks.length}</span>
      </h2>
      {marks.length === 0 ? (
        <p className={classes.empty}>
          {readOnly
            ? "Nothing is marked."
            : "Nothing marked yet. Choose what you see, then press where it is."}
        </p>
      ) : (
        <div className={classes.scroll} data-scrolls>
          <table className={classes.table}>
            <thead>
              <tr>
                <th scope="col">No.</th>
                <th scope="col">Characteristic and where</th>
                <th scope="col">{mode === "bench" ? "Confidence, proofs" : "Weight and more"}</th>
              </tr>
            </thead>
            <tbody>
              {marks.map((mark, index) => (
                <MarkRow
                  key={mark.id}
                  editor={editor}
                  solid={solid}
                  mark={mark}
                  number={index + 1}
                  mode={mode}
                  readOnly={readOnly}
                  onRemoved={onRemoved}
                  characteristics={characteristics}
                  notation={notation}
                />
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
});
