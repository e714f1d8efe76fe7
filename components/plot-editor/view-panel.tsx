"use client";

import { memo, useId, useMemo, useRef } from "react";
import { useSquareSize } from "@/components/plot-canvas/use-square-size";
import { useViewPointer } from "@/components/plot-canvas/use-view-pointer";
import type { OverlayLayer } from "@/components/plot-editor/plot-editor-props";
import type { CharacteristicsByName } from "@/components/plot-editor/subject-words";
import { type Editor, useEditorState } from "@/components/plot-editor/use-editor";
import { usePlotCanvas } from "@/components/plot-editor/use-plot-canvas";
import { useViewDrawing } from "@/components/plot-editor/use-view-drawing";
import { useViewKeys } from "@/components/plot-editor/use-view-keys";
import classes from "@/components/plot-editor/view-panel.module.css";
import { ViewReadout } from "@/components/plot-editor/view-readout";
import { VIEW_LABELS, ZoomButtons } from "@/components/plot-editor/zoom-buttons";
import type { Viewport } from "@/lib/editor/camera";
import type { EditorMode } from "@/lib/editor/editor-command";
import { findHandleAt, findMarkAt } from "@/lib/editor/find-at-point";
import { findMark, listMarks } from "@/lib/editor/plot-document";
import type { Solid } from "@/lib/gem/build-solid";
import { drawView } from "@/lib/gem/draw-view";
import { locatePoint } from "@/lib/gem/locate-point";
import type { Point, View } from "@/lib/gem/point";
import type { Notation } from "@/lib/plot/notation";

interface ViewPanelProps {
  readonly editor: Editor;
  readonly solid: Solid;
  readonly view: View;
  readonly mode: EditorMode;
  readonly characteristics: CharacteristicsByName;
  readonly layers: readonly OverlayLayer[];
  readonly notation: Notation;
  readonly onLayerPick: ((key: string) => void) | undefined;
  readonly name: string | undefined;
}

/** True where a press would take hold of a mark or of a handle, or go on with what is under way. */
function isHeldByMark(editor: Editor, view: View, at: Point, reach: number): boolean {
  const { document, selectedId, gesture } = editor.getState();
  const selected = findMark(document, selectedId);
  return (
    gesture !== null ||
    findMarkAt(listMarks(document), view, at, reach) !== null ||
    (selected?.view === view && findHandleAt(selected.shape, at, reach) !== null)
  );
}

/** What a press, a drag and the wheel do on a view. */
function usePointerOnView(props: ViewPanelProps, leaveKeyboard: () => void) {
  const { editor, view, layers, onLayerPick } = props;
  const pickedKey = useRef<string | null>(null);
  const overlay = useMemo(
    () =>
      layers.flatMap((layer) =>
        layer.items.map(({ key, view: of, shape }) => ({ id: key, view: of, shape })),
      ),
    [layers],
  );
  const highlightOverlay = (at: Point, reach: number) => {
    const { highlightedId, gesture } = editor.getState();
    if (overlay.length === 0 || highlightedId !== null || gesture !== null) return;
    editor.dispatch({ kind: "highlight", id: findMarkAt(overlay, view, at, reach)?.id ?? null });
  };
  const findPick = (at: Point, reach: number) => {
    const isPicking = onLayerPick !== undefined && editor.getState().tool === "select";
    if (!isPicking || isHeldByMark(editor, view, at, reach)) return null;
    return findMarkAt(overlay, view, at, reach)?.id ?? null;
  };
  return {
    onPress: (at: Point, reach: number) => {
      leaveKeyboard();
      pickedKey.current = findPick(at, reach);
      if (pickedKey.current !== null) return false;
      editor.dispatch({ kind: "press", place: { view, at }, reach });
      const { gesture, selectedId } = editor.getState();
      if (gesture === null && selectedId === null) highlightOverlay(at, reach);
      return gesture !== null && gesture.kind !== "aiming";
    },
    onDrag: (points: readonly Point[], reach: number) => editor.dispatch({ kind: "drag", points, reach }),
    onRelease: (reach: number) => editor.dispatch({ kind: "release", reach }),
    onInterrupt: () => editor.dispatch({ kind: "interrupt" }),
    onHover: (at: Point | null, reach: number) => {
      editor.dispatch({ kind: "hover", place: at === null ? null : { view, at }, reach });
      if (at !== null) highlightOverlay(at, reach);
    },
    onCamera: (camera: { zoom: number; centre: Point }) =>
      editor.dispatch({ kind: "set-camera", view, camera }),
    onTap: (at: Point) => {
      if (pickedKey.current !== null) onLayerPick?.(pickedKey.current);
      const { tool, cameras } = editor.getState();
      const { centre } = cameras[view];
      if (tool === "pan") {
        editor.dispatch({ kind: "pan", view, dx: at[0] - centre[0], dy: at[1] - centre[1] });
      }
    },
  };
}

/** Where the crosshair is, said as the arrow keys move it. */
function CrosshairWords({ editor, solid, view }: Pick<ViewPanelProps, "editor" | "solid" | "view">) {
  const at = useEditorState(editor, (state) => state.crosshairs[view]);
  return locatePoint(solid, view, at).words;
}

/** One view of the stone with its heading, zoom and readout; by mouse, pen, touch and keyboard. */
export const ViewPanel = memo(function ViewPanel(props: ViewPanelProps) {
  const { editor, solid, view, mode, characteristics, layers, notation } = props;
  const host = useRef<HTMLDivElement>(null);
  const helpId = useId();
  const PlotCanvas = usePlotCanvas();
  const sizePx = useSquareSize(host);
  const { halfWidth } = editor.getEnvironment().frame;
  const viewport = useMemo<Viewport>(() => ({ sizePx, halfWidth }), [sizePx, halfWidth]);
  const drawing = useMemo(() => drawView(solid, view), [solid, view]);
  const shown = useViewDrawing(editor, view, viewport, characteristics, layers);
  const keys = useViewKeys(editor, view, viewport, mode);
  const handlers = usePointerOnView(props, keys.leaveKeyboard);
  const pointer = useViewPointer(host, shown.camera, viewport, handlers, keys.isPanKeyDown);
  const tool = useEditorState(editor, (state) => state.tool);
  const crosshair = useEditorState(editor, (state) => state.crosshairs[view]);
  const isAiming = useEditorState(editor, (state) => state.gesture?.kind === "aiming");
  const count = shown.items.length;
  const label =
    props.name === undefined
      ? `${VIEW_LABELS[view]} view`
      : `${props.name}, ${VIEW_LABELS[view].toLowerCase()} view`;
  return (
    <section className={classes.panel} aria-label={label}>
      <header className={classes.heading}>
        <h2>{VIEW_LABELS[view]}</h2>
        <ViewReadout editor={editor} solid={solid} view={view} />
        <ZoomButtons editor={editor} view={view} />
      </header>
      <div
        ref={host}
        className={classes.canvas}
        role="application"
        aria-roledescription="diagram"
        aria-label={`${label}, ${count} ${count === 1 ? "mark" : "marks"}`}
        aria-describedby={helpId}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the keyboard's crosshair moves here.
        tabIndex={0}
        data-tool={isAiming ? "aim" : tool}
        data-view={view}
        {...pointer}
        {...keys.keyHandlers}
      >
        {sizePx > 0 && PlotCanvas !== null && (
          <PlotCanvas
            drawing={drawing}
            viewport={viewport}
            notation={notation}
            {...shown}
            crosshair={keys.isKeyboard ? crosshair : null}
          />
        )}
      </div>
      <p id={helpId} className="visually-hidden">
        Arrow keys move a crosshair, or the selected mark with the select tool. Enter places or selects. All
        marks are in the table of marks as well, where they can be added, moved and removed.
      </p>
      <p className="visually-hidden" aria-live="polite">
        {keys.isKeyboard && <CrosshairWords editor={editor} solid={solid} view={view} />}
      </p>
    </section>
  );
});
