"use client";

/**
 * The plot editor. The contract of its props stands in `plot-editor-props.ts`:
 *
 *   mode            "bench": a student plots. "reference": an instructor draws a reference, decoys included.
 *                   "debrief": overlays alone, to be read.
 *   cut, proportions  the stone; pass the same object each time, or the stone is built anew.
 *   initialMarks    read once (bench: PlottedMark[]; reference: ReferenceDrawing[], from joinReferenceDrawings).
 *                   Give another React `key` to open another plot.
 *   onChange(change, marks)  once for each undo entry and each step of undo or redo. `change` is `{ put, removed }`,
 *                   exactly a `marks` event of the sitting's log; `marks` is everything, in order, after it.
 *   nowMs           bench: milliseconds since the sitting opened, stamped on new marks as `atMs`.
 *   readOnly        nothing can be changed.
 *   characteristics, notation   what can be chosen and how it is drawn; defaults when not given.
 *   layers          overlays of any mode; `highlightId` and `onHighlight` keep them in step with the page's rows.
 *   onLayerPick     told the key of an overlay item that was pressed with the select tool.
 *   onSelect        told the id of the selected mark.
 *   handle          bench: lets the page around go to a mark. reference: lets the page around add a decoy or take something away, undoable like the rest.
 *   name            said before each view's name where two editors stand on one page.
 *   toolBarEnd, note, aside     slots: the state of saving; a quiet note; what stands beneath the table.
 *
 * It fills the width that it is given and lays itself out by that width.
 */

import { useDisclosure } from "@mantine/hooks";
import { useCallback, useEffect, useImperativeHandle, useMemo, useState } from "react";
import { AddMarkForm } from "@/components/plot-editor/add-mark-form";
import { ChangeWords } from "@/components/plot-editor/change-words";
import { HighlightSync } from "@/components/plot-editor/highlight-sync";
import { LayerItems, LayerSwitches } from "@/components/plot-editor/layer-list";
import { MarksTable } from "@/components/plot-editor/marks-table";
import { NoticeStrip } from "@/components/plot-editor/notice-strip";
import classes from "@/components/plot-editor/plot-editor.module.css";
import type {
  BenchHandle,
  OverlayLayer,
  PlotEditorProps,
  ReferenceHandle,
} from "@/components/plot-editor/plot-editor-props";
import { ShortcutsPanel } from "@/components/plot-editor/shortcuts-panel";
import { ToolBar } from "@/components/plot-editor/tool-bar";
import { type Editor, useEditor, useEditorState } from "@/components/plot-editor/use-editor";
import { ViewPanel } from "@/components/plot-editor/view-panel";
import { toKeyName } from "@/lib/editor/editor-command";
import { VIEWS } from "@/lib/gem/point";
import { DEFAULT_CHARACTERISTICS } from "@/lib/plot/characteristic";
import { DEFAULT_NOTATION, DIAGRAM_INKS } from "@/lib/plot/notation";

const NO_LAYERS: readonly OverlayLayer[] = [];

/** Which overlays are shown: as each is to begin with, until its switch is pressed. */
function useLayers(layers: readonly OverlayLayer[]) {
  const [switchedIds, setSwitchedIds] = useState<ReadonlySet<string>>(new Set());
  const hiddenIds = useMemo<ReadonlySet<string>>(() => {
    const hidden = layers.filter(({ id, isShown = true }) => isShown === switchedIds.has(id));
    return new Set(hidden.map(({ id }) => id));
  }, [layers, switchedIds]);
  const shown = useMemo(() => layers.filter(({ id }) => !hiddenIds.has(id)), [layers, hiddenIds]);
  const toggle = (id: string) =>
    setSwitchedIds((before) => {
      const next = new Set(before);
      if (!next.delete(id)) next.add(id);
      return next;
    });
  return { shown, hiddenIds, toggle };
}

/** Opens the picker when a mark was about to be placed and nothing is chosen. */
function usePicker(editor: Editor) {
  const [isOpen, setIsOpen] = useState(false);
  const notice = useEditorState(editor, (state) => state.notice);
  useEffect(() => {
    if (notice?.about === "no-subject") setIsOpen(true);
  }, [notice]);
  const open = useCallback(() => setIsOpen(true), []);
  return { isOpen, setIsOpen, open };
}

/** Undo and redo wherever the focus is within the editor, save in a field that undoes its own typing. */
function useUndoKeys(editor: Editor) {
  return (event: React.KeyboardEvent) => {
    const target = event.target as HTMLElement;
    if (target.closest("input:not([type=radio]):not([type=checkbox]), textarea, [contenteditable]")) return;
    const name = toKeyName(event);
    const kind = name === "mod+z" ? "undo" : name === "mod+shift+z" || name === "mod+y" ? "redo" : null;
    if (kind === null) return;
    event.preventDefault();
    editor.dispatch({ kind });
  };
}

/** What the page around a reference editor may do, through the editor's own changes. */
function useReferenceHandle(editor: Editor, props: PlotEditorProps) {
  useImperativeHandle(
    props.mode === "reference" ? props.handle : undefined,
    (): ReferenceHandle => ({
      addDecoy: ({ view, shape, cause }) =>
        editor.dispatch({ kind: "add", view, shape, subject: { kind: "decoy", cause } }),
      remove: (id) => editor.dispatch({ kind: "remove", id }),
    }),
    [editor],
  );
}

/** What the page around a bench may do. The row is focused once it is drawn. */
function useBenchHandle(editor: Editor, props: PlotEditorProps) {
  useImperativeHandle(
    props.mode === "bench" ? props.handle : undefined,
    (): BenchHandle => ({
      goTo: (markId) => {
        editor.dispatch({ kind: "choose-tool", tool: "select" });
        editor.dispatch({ kind: "select", id: markId });
        requestAnimationFrame(() => {
          const row = document.querySelector<HTMLElement>(`[data-mark-id="${CSS.escape(markId)}"]`);
          row?.focus();
          row?.scrollIntoView({ block: "center" });
        });
      },
    }),
    [editor],
  );
}

/** Both views of a stone with tools and the table of marks. */
export function PlotEditor(props: PlotEditorProps) {
  const { mode, layers = NO_LAYERS, notation = DEFAULT_NOTATION } = props;
  const { editor, solid } = useEditor(props);
  const readOnly = mode === "debrief" || (props.readOnly ?? false);
  const { characteristics: given } = props;
  const characteristics = useMemo(
    () => (given === undefined ? DEFAULT_CHARACTERISTICS : new Map(given.map((one) => [one.name, one]))),
    [given],
  );
  const overlays = useLayers(layers);
  const picker = usePicker(editor);
  const [isShortcutsOpen, { open: openShortcuts, close: closeShortcuts }] = useDisclosure(false);
  const onUndoKeys = useUndoKeys(editor);
  useReferenceHandle(editor, props);
  useBenchHandle(editor, props);
  const paper = {
    "--plot-paper-light": DIAGRAM_INKS.paper.light,
    "--plot-paper-dark": DIAGRAM_INKS.paper.dark,
  } as React.CSSProperties;
  const shared = { editor, solid, mode, characteristics, notation };
  const hasTable = mode !== "debrief";
  const isPlain = mode === "debrief" && (props.isPlain ?? false);
  const hasItems = mode === "debrief" && !props.hasOwnList;
  const hasSide = hasTable || hasItems || props.aside !== undefined;
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: catches undo and redo from the parts within.
    <div className={classes.root} style={paper} onKeyDown={onUndoKeys} data-mode={mode}>
      {!isPlain && (
        <div className={classes.top}>
          <ToolBar
            {...shared}
            readOnly={readOnly}
            isPickerOpen={picker.isOpen}
            onPickerOpen={picker.setIsOpen}
            onShortcuts={openShortcuts}
            end={props.toolBarEnd}
          />
          <NoticeStrip editor={editor}>
            {props.note}
            <LayerSwitches layers={layers} hiddenIds={overlays.hiddenIds} onToggle={overlays.toggle} />
          </NoticeStrip>
        </div>
      )}
      <div className={classes.body} data-side={hasSide || undefined}>
        <div className={classes.views}>
          {VIEWS.map((view) => (
            <ViewPanel
              key={view}
              {...shared}
              view={view}
              layers={overlays.shown}
              onLayerPick={props.onLayerPick}
              name={props.name}
            />
          ))}
        </div>
        {hasSide && (
          <div className={classes.side}>
            {hasTable && <MarksTable {...shared} readOnly={readOnly} />}
            {hasTable && !readOnly && <AddMarkForm editor={editor} onNeedsSubject={picker.open} />}
            {hasItems && <LayerItems editor={editor} layers={overlays.shown} notation={notation} />}
            {props.aside}
          </div>
        )}
      </div>
      <HighlightSync
        editor={editor}
        highlightId={props.highlightId}
        onHighlight={props.onHighlight}
        onSelect={props.onSelect}
      />
      <ChangeWords editor={editor} solid={solid} characteristics={characteristics} />
      <ShortcutsPanel mode={mode} isOpen={isShortcutsOpen} onClose={closeShortcuts} />
    </div>
  );
}
