import { type ComponentType, useEffect, useState } from "react";
import type { PlotCanvasHostProps } from "@/components/plot-editor/plot-canvas-host";

type PlotCanvas = ComponentType<PlotCanvasHostProps>;

let loaded: PlotCanvas | null = null;

/** Loads the code that draws; in the browser only. What has a diagram to show soon may call it ahead. */
export async function loadPlotCanvas(): Promise<PlotCanvas> {
  loaded ??= (await import("@/components/plot-editor/plot-canvas-host")).PlotCanvasHost;
  return loaded;
}

/**
 * The canvas, at once where its code is there, else null until it is. Throws, while rendering, where it cannot be had. Waiting
 * by suspense would put it behind all else that the page has left to draw.
 */
export function usePlotCanvas(): PlotCanvas | null {
  const [canvas, setCanvas] = useState<PlotCanvas | null>(() => loaded);
  useEffect(() => {
    if (canvas !== null) return;
    loadPlotCanvas().then(
      (found) => setCanvas(() => found),
      (thrown: unknown) =>
        setCanvas(() => {
          throw thrown;
        }),
    );
  }, [canvas]);
  return canvas;
}
