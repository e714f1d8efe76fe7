"use client";

import { ActionIcon, UnstyledButton } from "@mantine/core";
import { Minus, Plus } from "lucide-react";
import dynamic from "next/dynamic";
import { memo, useId, useMemo, useRef } from "react";
import { useSquareSize } from "@/components/plot-canvas/use-square-size";
import { useViewPointer } from "@/components/plot-canvas/use-view-pointer";
import type { OverlayLayer } from "@/components/plot-editor/plot-editor-props";
import type { CharacteristicsByName } from "@/components/plot-editor/subject-words";
import { type Editor, useEditorState } from "@/components/plot-editor/use-editor";
import { useViewDrawing } from "@/components/plot-editor/use-view-drawing";
import { useViewKeys } from "@/components/plot-editor/use-view-keys";
import classes from "@/components/plot-editor/view-panel.module.css";
import { ViewReadout } from "@/components/plot-editor/view-readout";
import { MAX_ZOOM, MIN_ZOOM, type Viewport, WHOLE_VIEW } from "@/lib/editor/camera";
import type { EditorMode } from "@/lib/editor/editor-commands";
import { findMarkAt } from "@/lib/editor/find-at-point";
import type { Solid } from "@/lib/gem/build-solid";
import { drawView } from "@/lib/gem/draw-view";
import { locatePoint } from "@/lib/gem/locate-point";
import type { Point, View } from "@/lib/gem/point";
import type { Notation } from "@/lib/plot/notation";

const PlotCanvasHost = dynamic(
  () => import("@/components/plot-editor/plot-canvas-host").then((module) => module.PlotCanvasHost),
  { ssr: false },
);

const VIEW_LABELS: Readonly<Record<View, string>> = { crown: "Crown", pavilion: "Pavilion" };
const ZOOM_STEP = 1.5;

interface ViewPanelProps {
  readonly editor: Editor;
  readonly solid: Solid;
  readonly view: View;
  readonly mode: EditorMode;
  readonly characteristics: CharacteristicsByName;
  readonly layers: readonly OverlayLayer[];
  readonly notation: Notation;
}

/** What a press, a drag and the wheel do on a view. */
function usePointerOnView({ editor, view, layers }: ViewPanelProps, leaveKeyboard: () => void) {
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
  return {
    onPress: (at: Point, reach: number) => {
      leaveKeyboard();
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
      const { tool, cameras } = editor.getState();
      const { centre } = cameras[view];
      if (tool === "pan") {
        editor.dispatch({ kind: "pan", view, dx: at[0] - centre[0], dy: at[1] - centre[1] });
      }
    },
  };
}

const ZoomButtons = memo(function ZoomButtons({ editor, view }: Pick<ViewPanelProps, "editor" | "view">) {
  const camera = useEditorState(editor, (state) => state.cameras[view]);
  const zoomBy = (factor: number) =>
    editor.dispatch({ kind: "zoom", view, factor, anchor: editor.getState().cameras[view].centre });
  const label = VIEW_LABELS[view].toLowerCase();
  return (
    <div className={classes.zoom}>
      <ActionIcon
        variant="subtle"
        className={classes.zoomButton}
        size={30}
        aria-label={`Zoom out of the ${label}`}
        disabled={camera.zoom <= MIN_ZOOM}
        onClick={() => zoomBy(1 / ZOOM_STEP)}
      >
        <Minus size={16} />
      </ActionIcon>
      <UnstyledButton
        className={classes.zoomValue}
        aria-label={`Zoom ${camera.zoom.toFixed(1)} times; show the whole ${label}`}
        onClick={() => editor.dispatch({ kind: "set-camera", view, camera: WHOLE_VIEW })}
      >
        {camera.zoom.toFixed(1)}×
      </UnstyledButton>
      <ActionIcon
        variant="subtle"
        className={classes.zoomButton}
        size={30}
        aria-label={`Zoom in on the ${label}`}
        disabled={camera.zoom >= MAX_ZOOM}
        onClick={() => zoomBy(ZOOM_STEP)}
      >
        <Plus size={16} />
      </ActionIcon>
    </div>
  );
});

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
  return (
    <section className={classes.panel} aria-label={`${VIEW_LABELS[view]} view`}>
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
        aria-label={`${VIEW_LABELS[view]} view, ${count} ${count === 1 ? "mark" : "marks"}`}
        aria-describedby={helpId}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the keyboard's crosshair moves here.
        tabIndex={0}
        data-tool={isAiming ? "aim" : tool}
        data-view={view}
        {...pointer}
        {...keys.keyHandlers}
      >
        {sizePx > 0 && (
          <PlotCanvasHost
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
