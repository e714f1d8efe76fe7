import type { Palette } from "@/components/plot-canvas/drawn-item";
import type { ViewDrawing } from "@/lib/gem/draw-view";
import { fromClockDeg, type Point } from "@/lib/gem/point";

/** What the painters need of a canvas; a test passes one that records its calls. */
export type PaintContext = Pick<
  CanvasRenderingContext2D,
  | "save"
  | "restore"
  | "beginPath"
  | "closePath"
  | "moveTo"
  | "lineTo"
  | "arc"
  | "rect"
  | "fill"
  | "stroke"
  | "fillText"
  | "setLineDash"
  | "strokeStyle"
  | "fillStyle"
  | "lineWidth"
  | "lineJoin"
  | "lineCap"
  | "globalAlpha"
  | "font"
  | "textAlign"
  | "textBaseline"
>;

/** From a view's frame to pixels of the canvas. */
export type ToPx = (point: Point) => Point;

/** Begins a path through the points. */
export function tracePath(context: PaintContext, points: readonly Point[], isClosed: boolean): void {
  context.beginPath();
  points.forEach(([x, y], i) => {
    if (i === 0) context.moveTo(x, y);
    else context.lineTo(x, y);
  });
  if (isClosed) context.closePath();
}

const FONT = "'Atkinson Hyperlegible Next Variable', system-ui, sans-serif";

/** The clock around the stone: a tick for each five minutes of the dial, longer on the hours, hours as numerals. */
function paintClock(context: PaintContext, drawing: ViewDrawing, toPx: ToPx, palette: Palette): void {
  const reach = Math.max(...drawing.outline.map(([x, y]) => Math.hypot(x, y)));
  context.strokeStyle = palette.clock;
  context.fillStyle = palette.clock;
  context.font = `500 11px ${FONT}`;
  context.textAlign = "center";
  context.textBaseline = "middle";
  for (let tick = 0; tick < 60; tick += 1) {
    const isHour = tick % 5 === 0;
    const at = (share: number) => toPx(fromClockDeg(drawing.view, tick * 6, reach * share));
    context.lineWidth = isHour ? 1.25 : 0.75;
    context.globalAlpha = isHour ? 0.9 : 0.45;
    tracePath(context, [at(1.03), at(isHour ? 1.065 : 1.05)], false);
    context.stroke();
    if (!isHour) continue;
    const [x, y] = at(1.115);
    context.globalAlpha = 1;
    context.fillText(String(tick === 0 ? 12 : tick / 5), x, y);
  }
  context.globalAlpha = 1;
}

/** The stone itself: its face, its facet edges and its girdle, within the clock. */
export function paintStone(context: PaintContext, drawing: ViewDrawing, toPx: ToPx, palette: Palette): void {
  context.save();
  context.setLineDash([]);
  context.lineJoin = "round";
  context.lineCap = "round";
  const outline = drawing.outline.map(toPx);
  tracePath(context, outline, true);
  context.fillStyle = palette.stone;
  context.fill();
  context.strokeStyle = palette.facet;
  context.lineWidth = 1;
  context.beginPath();
  for (const [from, to] of drawing.edges) {
    const [a, b] = [toPx(from), toPx(to)];
    context.moveTo(a[0], a[1]);
    context.lineTo(b[0], b[1]);
  }
  context.stroke();
  tracePath(context, outline, true);
  context.strokeStyle = palette.girdle;
  context.lineWidth = 1.75;
  context.stroke();
  paintClock(context, drawing, toPx, palette);
  context.restore();
}
