"use client";

import { useEffect, useRef } from "react";
import { type Editor, useEditorState } from "@/components/plot-editor/use-editor";

interface HighlightSyncProps {
  readonly editor: Editor;
  readonly highlightId: string | null | undefined;
  readonly onHighlight: ((id: string | null) => void) | undefined;
  readonly onSelect: ((id: string | null) => void) | undefined;
}

/**
 * Keeps what is highlighted and selected in step with the page around, both ways. Shows nothing; a component of its
 * own so that a moving pointer renders no more than this.
 */
export function HighlightSync({ editor, highlightId, onHighlight, onSelect }: HighlightSyncProps) {
  const highlighted = useEditorState(editor, (state) => state.highlightedId);
  const selected = useEditorState(editor, (state) => state.selectedId);
  const tell = useRef({ onHighlight, onSelect });
  tell.current = { onHighlight, onSelect };
  useEffect(() => {
    if (highlightId !== undefined) editor.dispatch({ kind: "highlight", id: highlightId });
  }, [editor, highlightId]);
  useEffect(() => tell.current.onHighlight?.(highlighted), [highlighted]);
  useEffect(() => tell.current.onSelect?.(selected), [selected]);
  return null;
}
