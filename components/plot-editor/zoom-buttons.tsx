"use client";

import { ActionIcon, UnstyledButton } from "@mantine/core";
import { Minus, Plus } from "lucide-react";
import { memo } from "react";
import { type Editor, useEditorState } from "@/components/plot-editor/use-editor";
import classes from "@/components/plot-editor/view-panel.module.css";
import { MAX_ZOOM, MIN_ZOOM, WHOLE_VIEW } from "@/lib/editor/camera";
import type { View } from "@/lib/gem/point";

export const VIEW_LABELS: Readonly<Record<View, string>> = { crown: "Crown", pavilion: "Pavilion" };
const ZOOM_STEP = 1.5;

interface ZoomButtonsProps {
  readonly editor: Editor;
  readonly view: View;
}

/** Zooms a view in and out about its middle, says how far, and goes back to the whole. */
export const ZoomButtons = memo(function ZoomButtons({ editor, view }: ZoomButtonsProps) {
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
