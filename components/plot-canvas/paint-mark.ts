import type { DrawnItem, DrawnLink, Palette, Pen } from "@/components/plot-canvas/drawn-item";
import { type PaintContext, type ToPx, tracePath } from "@/components/plot-canvas/paint-stone";
import type { Point } from "@/lib/gem/point";
import type { Shape } from "@/lib/plot/shape";

const DOT_PX = 3.25;

function traceDot(context: PaintContext, pen: Pick<Pen, "dot">, [x, y]: Point, radius: number): void {
  context.beginPath();
  if (pen.dot === "square") {
    context.rect(x - radius, y - radius, 2 * radius, 2 * radius);
  } else if (pen.dot === "cross") {
    context.moveTo(x - radius, y - radius);
    context.lineTo(x + radius, y + radius);
    context.moveTo(x + radius, y - radius);
    context.lineTo(x - radius, y + radius);
  } else {
    context.arc(x, y, radius, 0, 2 * Math.PI);
  }
}

function paintDot(context: PaintContext, pen: Pen, at: Point, paper: string, isReference: boolean): void {
  context.setLineDash([]);
  if (isReference) {
    context.lineWidth = 1.25;
    context.beginPath();
    context.arc(at[0], at[1], DOT_PX + 4, 0, 2 * Math.PI);
    context.stroke();
  }
  context.lineWidth = 2;
  if (pen.dot === "cross") {
    traceDot(context, pen, at, DOT_PX + 0.75);
    context.stroke();
    return;
  }
  traceDot(context, pen, at, pen.dot === "filled" ? DOT_PX : DOT_PX + 0.75);
  context.fillStyle = pen.dot === "filled" ? pen.ink : paper;
  context.fill();
  if (pen.dot !== "filled") context.stroke();
}

/** A prediction: an open ring, fainter and smaller the weaker it is. */
function paintRing(context: PaintContext, [x, y]: Point, strength: number): void {
  context.setLineDash([]);
  context.globalAlpha = 0.35 + 0.5 * strength;
  context.lineWidth = 1.25;
  context.beginPath();
  context.arc(x, y, 2.5 + 3.5 * strength, 0, 2 * Math.PI);
  context.stroke();
}

/** How many marked a place: a disc that grows with the diagram, washed in and edged so that it reads on paper. */
function paintDisc(context: PaintContext, [x, y]: Point, radius: number): void {
  context.setLineDash([]);
  context.beginPath();
  context.arc(x, y, radius, 0, 2 * Math.PI);
  context.globalAlpha = 0.22;
  context.fill();
  context.globalAlpha = 0.8;
  context.lineWidth = 1;
  context.stroke();
}

/** Draws one item as what was seen: a dot, a stroke or an outline, in the pen of its style. */
export function paintMark(context: PaintContext, item: DrawnItem, toPx: ToPx, palette: Palette): void {
  const pen = palette.pens[item.style];
  context.save();
  context.strokeStyle = pen.ink;
  context.lineJoin = "round";
  context.lineCap = "round";
  if (item.shape.kind === "dot" && item.discRadius !== undefined) {
    const [x, y] = item.shape.at;
    context.fillStyle = pen.ink;
    paintDisc(context, toPx([x, y]), Math.abs(toPx([x + item.discRadius, y])[0] - toPx([x, y])[0]));
  } else if (item.shape.kind === "dot" && item.strength !== undefined) {
    paintRing(context, toPx(item.shape.at), item.strength);
  } else if (item.shape.kind === "dot") {
    paintDot(context, pen, toPx(item.shape.at), palette.paper, item.side === "reference");
  } else {
    const isOutline = item.shape.kind === "outline";
    tracePath(context, item.shape.points.map(toPx), isOutline);
    if (isOutline) {
      context.globalAlpha = item.side === "plotted" ? 0 : item.side === "reference" ? 0.16 : 0.1;
      context.fillStyle = pen.ink;
      context.fill();
      context.globalAlpha = 1;
    }
    context.setLineDash([...pen.dashPx]);
    context.lineWidth = item.side === "reference" ? pen.widthPx + 0.75 : pen.widthPx;
    context.stroke();
  }
  context.restore();
}

/** A wide soft line around a shape: what is selected or pointed at. */
export function paintHalo(
  context: PaintContext,
  shape: Shape,
  toPx: ToPx,
  ink: string,
  isStrong: boolean,
): void {
  context.save();
  context.strokeStyle = ink;
  context.lineJoin = "round";
  context.lineCap = "round";
  context.globalAlpha = isStrong ? 0.3 : 0.18;
  if (shape.kind === "dot") {
    const [x, y] = toPx(shape.at);
    context.lineWidth = 5;
    context.beginPath();
    context.arc(x, y, DOT_PX + 5, 0, 2 * Math.PI);
  } else {
    context.lineWidth = 10;
    tracePath(context, shape.points.map(toPx), shape.kind === "outline");
  }
  context.stroke();
  context.restore();
}

/** A thin line between the two of a pair. */
export function paintLink(context: PaintContext, link: DrawnLink, toPx: ToPx, palette: Palette): void {
  context.save();
  context.strokeStyle = palette.pens[link.style].ink;
  context.lineWidth = 1;
  context.globalAlpha = 0.75;
  context.setLineDash([2, 3]);
  tracePath(context, [toPx(link.from), toPx(link.to)], false);
  context.stroke();
  context.restore();
}
