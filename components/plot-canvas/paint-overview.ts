import type { Palette } from "@/components/plot-canvas/drawn-item";
import { type PaintContext, tracePath } from "@/components/plot-canvas/paint-stone";
import { type Camera, toScreenPx, type Viewport, WHOLE_VIEW } from "@/lib/editor/camera";
import type { ViewDrawing } from "@/lib/gem/draw-view";
import { fromClockDeg, type Point } from "@/lib/gem/point";

const SIDE_PX = 68;
const MARGIN_PX = 10;

/** Where in the stone one looks: the girdle, 12 o'clock and the window, small in a corner. Nothing at zoom 1. */
export function paintOverview(
  context: PaintContext,
  drawing: ViewDrawing,
  camera: Camera,
  viewport: Viewport,
  palette: Palette,
): void {
  if (camera.zoom <= 1) return;
  const small: Viewport = { sizePx: SIDE_PX, halfWidth: viewport.halfWidth };
  const corner = viewport.sizePx - SIDE_PX - MARGIN_PX;
  const toPx = (point: Point): Point => {
    const [x, y] = toScreenPx(WHOLE_VIEW, small, point);
    return [corner + x, corner + y];
  };
  context.save();
  context.setLineDash([]);
  context.fillStyle = palette.paper;
  context.globalAlpha = 0.88;
  context.beginPath();
  context.rect(corner, corner, SIDE_PX, SIDE_PX);
  context.fill();
  context.globalAlpha = 1;
  context.strokeStyle = palette.girdle;
  context.lineWidth = 1;
  tracePath(context, drawing.outline.map(toPx), true);
  context.stroke();
  const rim = Math.max(...drawing.outline.map(([, y]) => y));
  const tick = [fromClockDeg(drawing.view, 0, rim), fromClockDeg(drawing.view, 0, rim * 1.14)];
  tracePath(context, tick.map(toPx), false);
  context.stroke();
  const half = viewport.halfWidth / camera.zoom;
  const [x, y] = camera.centre;
  const [left, top] = toPx([x - half, y + half]);
  const [right, bottom] = toPx([x + half, y - half]);
  context.strokeStyle = palette.ink;
  context.lineWidth = 1.5;
  context.beginPath();
  context.rect(left, top, right - left, bottom - top);
  context.stroke();
  context.restore();
}
