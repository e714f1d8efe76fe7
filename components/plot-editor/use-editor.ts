import { useEffect, useMemo, useRef, useState, useSyncExternalStore } from "react";
import type { PlotEditorProps } from "@/components/plot-editor/plot-editor-props";
import { createPlottedMark, createReferenceDrawing } from "@/lib/editor/create-mark";
import type { MarksChange } from "@/lib/editor/document-change";
import type { EditorMark, ReferenceDrawing } from "@/lib/editor/drawn-mark";
import { createEditorState, type EditorEnvironment, type EditorState } from "@/lib/editor/editor-state";
import { createEditorStore, type EditorStore } from "@/lib/editor/editor-store";
import { createStoneFrame } from "@/lib/editor/stone-frame";
import { createIdSuffix, createIdSupply } from "@/lib/editor/supply-ids";
import { getSolid, type Solid } from "@/lib/gem/build-solid";
import type { PlottedMark } from "@/lib/plot/mark";

export type Editor = EditorStore<EditorMark>;

/** One part of an editor's state, followed as it changes. The selector must give the same thing for the same state. */
export function useEditorState<T>(editor: Editor, select: (state: EditorState<EditorMark>) => T): T {
  return useSyncExternalStore(
    editor.subscribe,
    () => select(editor.getState()),
    () => select(editor.getState()),
  );
}

function tellChange(
  props: PlotEditorProps,
  change: MarksChange<EditorMark>,
  marks: readonly EditorMark[],
): void {
  // The mode fixes the kind of every mark: `createMark` makes no other, and `initialMarks` holds no other.
  if (props.mode === "bench") {
    props.onChange?.(change as MarksChange<PlottedMark>, marks as readonly PlottedMark[]);
  } else if (props.mode === "reference") {
    props.onChange?.(change as MarksChange<ReferenceDrawing>, marks as readonly ReferenceDrawing[]);
  }
}

/** The editor behind a `PlotEditor`, made once (for each stone where nothing is drawn), and the stone that it is on. */
export function useEditor(props: PlotEditorProps): { editor: Editor; solid: Solid } {
  const { cut, proportions, mode, readOnly = false } = props;
  const solid = useMemo(() => getSolid(cut, proportions), [cut, proportions]);
  const latest = useRef(props);
  latest.current = props;
  const [openedAtMs] = useState(() => Date.now());
  const marks: readonly EditorMark[] = props.mode === "debrief" ? [] : props.initialMarks;
  const [takeId] = useState(() => {
    const suffix = props.mode === "debrief" ? "" : (props.idSuffix ?? createIdSuffix());
    return createIdSupply(
      marks.map(({ id }) => id),
      suffix,
    );
  });
  const environment = useMemo<EditorEnvironment<EditorMark>>(
    () => ({
      frame: createStoneFrame(solid),
      createMark: mode === "bench" ? createPlottedMark : createReferenceDrawing,
      takeId,
      nowMs: () => {
        const { current } = latest;
        return current.mode === "bench" && current.nowMs ? current.nowMs() : Date.now() - openedAtMs;
      },
      readOnly: readOnly || mode === "debrief",
    }),
    [solid, mode, takeId, openedAtMs, readOnly],
  );
  const openEditor = () => {
    const tool = environment.readOnly || marks.length > 0 ? "select" : "dot";
    const store = createEditorStore(createEditorState(marks, tool), environment, (change, all) =>
      tellChange(latest.current, change, all),
    );
    return { store, solid };
  };
  const [opened, setOpened] = useState(openEditor);
  // Another stone in place of the shown one: a fresh editor on the same canvases. Where marks are drawn, they stay.
  const current = mode === "debrief" && opened.solid !== solid ? openEditor() : opened;
  if (current !== opened) setOpened(current);
  const editor = current.store;
  useEffect(() => editor.setEnvironment(environment), [editor, environment]);
  return { editor, solid };
}
