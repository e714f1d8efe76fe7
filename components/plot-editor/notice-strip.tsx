"use client";

import { Button } from "@mantine/core";
import type { ReactNode } from "react";
import classes from "@/components/plot-editor/plot-editor.module.css";
import { type Editor, useEditorState } from "@/components/plot-editor/use-editor";

interface NoticeStripProps {
  readonly editor: Editor;
  readonly children: ReactNode;
}

/** One line under the tool bar: why something was not done, what is being drawn and how to end it, or a note. */
export function NoticeStrip({ editor, children }: NoticeStripProps) {
  const notice = useEditorState(editor, (state) => state.notice);
  const drawing = useEditorState(editor, (state) =>
    state.gesture?.kind === "drawing" && state.gesture.freehand === null ? state.gesture : null,
  );
  const isAiming = useEditorState(editor, (state) => state.gesture?.kind === "aiming");
  const count = drawing?.points.length ?? 0;
  return (
    <div className={classes.strip}>
      <p className={classes.notice} role="status" data-about={notice?.about}>
        {notice?.text ??
          (count > 0 ? `${drawing?.shape === "stroke" ? "Stroke" : "Outline"}, ${count} set` : "")}
      </p>
      {count > 0 && (
        <>
          <Button size="compact-sm" onClick={() => editor.dispatch({ kind: "finish" })}>
            Finish
          </Button>
          <Button
            size="compact-sm"
            variant="outline"
            onClick={() => editor.dispatch({ kind: "take-back-point" })}
          >
            Take back one
          </Button>
        </>
      )}
      {(count > 0 || isAiming) && (
        <Button size="compact-sm" variant="subtle" onClick={() => editor.dispatch({ kind: "cancel" })}>
          Leave off
        </Button>
      )}
      {count === 0 && !isAiming && notice === null && children}
    </div>
  );
}
