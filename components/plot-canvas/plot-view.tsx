"use client";

import Konva from "konva";
import { useMemo } from "react";
import { Layer, Shape, Stage } from "react-konva";
import type { DrawnItem, DrawnLink, Palette } from "@/components/plot-canvas/drawn-item";
import { layoutCallouts, type PlacedCallout } from "@/components/plot-canvas/layout-callouts";
import { paintCallouts } from "@/components/plot-canvas/paint-callouts";
import { paintHalo, paintLink, paintMark } from "@/components/plot-canvas/paint-mark";
import {
  type DrawnHandle,
  paintCrosshair,
  paintDraft,
  paintHandles,
} from "@/components/plot-canvas/paint-overlay";
import { paintOverview } from "@/components/plot-canvas/paint-overview";
import { type PaintContext, paintStone, type ToPx } from "@/components/plot-canvas/paint-stone";
import { type Camera, toScreenPx, type Viewport } from "@/lib/editor/camera";
import type { ViewDrawing } from "@/lib/gem/draw-view";
import type { Point } from "@/lib/gem/point";
import type { MarkStyleName } from "@/lib/plot/notation";

/** A stroke or an outline in the making. */
export interface DrawnDraft {
  readonly points: readonly Point[];
  readonly next: Point | null;
  readonly style: MarkStyleName;
}

export interface PlotViewProps {
  readonly drawing: ViewDrawing;
  readonly camera: Camera;
  readonly viewport: Viewport;
  readonly palette: Palette;
  /** Changes seldom: all marks, in order of their numbers, and lines between pairs. */
  readonly items: readonly DrawnItem[];
  readonly links: readonly DrawnLink[];
  /** The item that is being dragged and is drawn as `active` instead. */
  readonly hiddenKey: string | null;
  /** Changes while dragging. */
  readonly active: DrawnItem | null;
  readonly draft: DrawnDraft | null;
  /** Changes as the pointer moves. */
  readonly selectedKey: string | null;
  readonly highlightedKey: string | null;
  readonly handles: readonly DrawnHandle[];
  readonly crosshair: Point | null;
  readonly pixelRatio: number;
}

type Paint = (context: PaintContext) => void;

/** One canvas layer, painted in one go. */
function PaintedLayer({ name, paint }: { name: string; paint: Paint }) {
  return (
    <Layer listening={false} name={name}>
      <Shape
        listening={false}
        perfectDrawEnabled={false}
        sceneFunc={(context: Konva.Context) => paint(context._context)}
      />
    </Layer>
  );
}

/** The items that an overlay is drawn around, the selected one last. */
function listMarked(props: PlotViewProps): { item: DrawnItem; isStrong: boolean }[] {
  const { items, active, hiddenKey, selectedKey, highlightedKey } = props;
  const find = (key: string | null) => {
    if (key === null) return null;
    if (key === hiddenKey && active !== null) return active;
    return items.find((item) => item.key === key) ?? null;
  };
  const highlighted = highlightedKey === selectedKey ? null : find(highlightedKey);
  const selected = find(selectedKey);
  return [
    ...(highlighted === null ? [] : [{ item: highlighted, isStrong: false }]),
    ...(selected === null ? [] : [{ item: selected, isStrong: true }]),
  ];
}

function useOverlay(props: PlotViewProps, toPx: ToPx, placed: readonly PlacedCallout[]): Paint {
  const { palette, handles, crosshair, viewport, hiddenKey } = props;
  return (context) => {
    for (const { item, isStrong } of listMarked(props)) {
      paintHalo(context, item.shape, toPx, palette.ink, isStrong);
      paintMark(context, item, toPx, palette);
      const known = item.key === hiddenKey ? undefined : placed.find((one) => one.item.key === item.key);
      const callouts =
        known === undefined ? layoutCallouts([item], toPx, toPx([0, 0]), viewport.sizePx) : [known];
      paintCallouts(context, callouts, palette, true);
    }
    paintHandles(context, handles, toPx, palette);
    if (crosshair !== null) paintCrosshair(context, toPx(crosshair), palette);
  };
}

/**
 * One view of a stone on four canvas layers by rate of change: the stone, the marks, what is being dragged or
 * drawn, and what follows the pointer. It draws what it is given and listens to nothing.
 */
export function PlotView(props: PlotViewProps) {
  const { drawing, camera, viewport, palette, items, links, hiddenKey, active, draft, pixelRatio } = props;
  const { sizePx } = viewport;
  const toPx = useMemo<ToPx>(() => (point) => toScreenPx(camera, viewport, point), [camera, viewport]);
  const placed = useMemo(() => layoutCallouts(items, toPx, toPx([0, 0]), sizePx), [items, toPx, sizePx]);
  const stone = useMemo(
    () => <PaintedLayer name="stone" paint={(context) => paintStone(context, drawing, toPx, palette)} />,
    [drawing, toPx, palette],
  );
  const marks = useMemo(() => {
    const paint: Paint = (context) => {
      for (const link of links) paintLink(context, link, toPx, palette);
      for (const item of items) if (item.key !== hiddenKey) paintMark(context, item, toPx, palette);
      paintCallouts(
        context,
        placed.filter(({ item }) => item.key !== hiddenKey),
        palette,
      );
      paintOverview(context, drawing, camera, viewport, palette);
    };
    return <PaintedLayer name="marks" paint={paint} />;
  }, [items, links, hiddenKey, placed, toPx, palette, drawing, camera, viewport]);
  const activeLayer = useMemo(() => {
    const paint: Paint = (context) => {
      if (active !== null) paintMark(context, active, toPx, palette);
      if (draft !== null) paintDraft(context, draft.points, draft.next, toPx, palette.pens[draft.style].ink);
    };
    return <PaintedLayer name="active" paint={paint} />;
  }, [active, draft, toPx, palette]);
  const overlay = useOverlay(props, toPx, placed);
  Konva.pixelRatio = pixelRatio;
  return (
    <Stage key={pixelRatio} width={sizePx} height={sizePx} listening={false}>
      {stone}
      {marks}
      {activeLayer}
      <PaintedLayer name="overlay" paint={overlay} />
    </Stage>
  );
}
