"use client";

import { useComputedColorScheme } from "@mantine/core";
import Konva from "konva";
import { useLayoutEffect, useMemo } from "react";
import { buildPalette } from "@/components/plot-canvas/build-palette";
import { PlotView, type PlotViewProps } from "@/components/plot-canvas/plot-view";
import { usePixelRatio } from "@/components/plot-canvas/use-pixel-ratio";
import { usePrinting } from "@/components/plot-canvas/use-printing";
import type { Notation } from "@/lib/plot/notation";

type PlotCanvasHostProps = Omit<PlotViewProps, "palette" | "pixelRatio"> & { readonly notation: Notation };

/** A view in the colours of the theme that is on, on paper in the light one, and at the screen's own resolution. In the browser only. */
export function PlotCanvasHost({ notation, ...view }: PlotCanvasHostProps) {
  const scheme = useComputedColorScheme("light", { getInitialValueInEffect: false });
  const pixelRatio = usePixelRatio();
  const isPrinting = usePrinting();
  const inks = isPrinting ? "light" : scheme;
  const palette = useMemo(() => buildPalette(notation, inks), [notation, inks]);
  // Else it is painted with the next frame of the screen, which comes after the paper.
  useLayoutEffect(() => {
    if (isPrinting) for (const stage of Konva.stages) stage.draw();
  }, [isPrinting]);
  return <PlotView {...view} palette={palette} pixelRatio={pixelRatio} />;
}
