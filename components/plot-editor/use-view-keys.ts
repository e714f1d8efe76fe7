import { type KeyboardEvent, useCallback, useEffect, useRef, useState } from "react";
import type { Editor } from "@/components/plot-editor/use-editor";
import type { Viewport } from "@/lib/editor/camera";
import type { EditorMode } from "@/lib/editor/editor-command";
import { findCommand } from "@/lib/editor/editor-commands";
import { runCommand } from "@/lib/editor/run-command";
import type { View } from "@/lib/gem/point";

/** A run of arrow keys is over after this pause and becomes one undo entry. */
const SETTLE_MS = 600;

/** The keyboard on a view that has the focus. `isKeyboard`: the last thing used on it was a key. */
export function useViewKeys(editor: Editor, view: View, viewport: Viewport, mode: EditorMode) {
  const isPanKeyDown = useRef(false);
  const timer = useRef<ReturnType<typeof setTimeout> | null>(null);
  const [isKeyboard, setIsKeyboard] = useState(false);

  const settle = useCallback(() => {
    if (timer.current !== null) clearTimeout(timer.current);
    timer.current = null;
    if (editor.getState().gesture?.kind === "nudging") editor.dispatch({ kind: "settle" });
  }, [editor]);
  useEffect(() => settle, [settle]);

  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    if (event.key === " ") {
      isPanKeyDown.current = true;
      event.preventDefault();
      return;
    }
    const command = findCommand(event, mode);
    if (command === null) return;
    event.preventDefault();
    event.stopPropagation();
    if (command.isNudge || command.name === "press") setIsKeyboard(true);
    runCommand(editor, command, { view, viewport, mode });
    if (editor.getState().gesture?.kind !== "nudging") return;
    if (timer.current !== null) clearTimeout(timer.current);
    timer.current = setTimeout(settle, SETTLE_MS);
  };

  return {
    isPanKeyDown,
    isKeyboard,
    leaveKeyboard: () => setIsKeyboard(false),
    keyHandlers: {
      onKeyDown,
      onKeyUp: (event: KeyboardEvent) => {
        if (event.key === " ") isPanKeyDown.current = false;
      },
      onBlur: () => {
        isPanKeyDown.current = false;
        settle();
        if (isKeyboard) editor.dispatch({ kind: "hover", place: null, reach: 0 });
        setIsKeyboard(false);
      },
    },
  };
}
