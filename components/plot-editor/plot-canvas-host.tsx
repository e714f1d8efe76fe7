"use client";

import { useComputedColorScheme } from "@mantine/core";
import { useMemo } from "react";
import { buildPalette } from "@/components/plot-canvas/build-palette";
import { PlotView, type PlotViewProps } from "@/components/plot-canvas/plot-view";
import { usePixelRatio } from "@/components/plot-canvas/use-pixel-ratio";
import type { Notation } from "@/lib/plot/notation";

export type PlotCanvasHostProps = Omit<PlotViewProps, "palette" | "pixelRatio"> & {
  readonly notation: Notation;
};

/** A view in the colours of the theme that is on and at the screen's own resolution. In the browser only. */
export function PlotCanvasHost({ notation, ...view }: PlotCanvasHostProps) {
  const scheme = useComputedColorScheme("light", { getInitialValueInEffect: false });
  const pixelRatio = usePixelRatio();
  const palette = useMemo(() => buildPalette(notation, scheme), [notation, scheme]);
  return <PlotView {...view} palette={palette} pixelRatio={pixelRatio} />;
}
