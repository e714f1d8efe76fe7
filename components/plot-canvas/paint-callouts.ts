import type { Palette } from "@/components/plot-canvas/drawn-item";
import { CALLOUT_RADIUS_PX, type PlacedCallout } from "@/components/plot-canvas/layout-callouts";
import { type PaintContext, tracePath } from "@/components/plot-canvas/paint-stone";
import type { Point } from "@/lib/gem/point";
import type { MarkStyle } from "@/lib/plot/notation";

const FONT = "'Atkinson Hyperlegible Next Variable', system-ui, sans-serif";

function traceForm(context: PaintContext, form: MarkStyle["callout"], [x, y]: Point): void {
  const r = CALLOUT_RADIUS_PX;
  if (form === "round") {
    context.beginPath();
    context.arc(x, y, r, 0, 2 * Math.PI);
  } else if (form === "square") {
    const s = r - 1;
    tracePath(
      context,
      [
        [x - s, y - s],
        [x + s, y - s],
        [x + s, y + s],
        [x - s, y + s],
      ],
      true,
    );
  } else if (form === "diamond") {
    const s = r + 2.5;
    tracePath(
      context,
      [
        [x, y - s],
        [x + s, y],
        [x, y + s],
        [x - s, y],
      ],
      true,
    );
  } else {
    const s = r + 2;
    tracePath(
      context,
      [
        [x, y - s - 1],
        [x + s, y + s * 0.7],
        [x - s, y + s * 0.7],
      ],
      true,
    );
  }
}

/** Draws callouts: a hair-fine leader, the form of the style, and the number on paper. */
export function paintCallouts(
  context: PaintContext,
  callouts: readonly PlacedCallout[],
  palette: Palette,
  isStrong = false,
): void {
  context.save();
  context.textAlign = "center";
  context.textBaseline = "middle";
  context.lineJoin = "round";
  for (const { item, text, at, anchor } of callouts) {
    const pen = palette.pens[item.style];
    context.strokeStyle = pen.ink;
    context.setLineDash([]);
    context.lineWidth = 1;
    context.globalAlpha = 0.6;
    tracePath(context, [anchor, at], false);
    context.stroke();
    context.globalAlpha = 1;
    traceForm(context, pen.callout, at);
    context.fillStyle = isStrong ? pen.ink : palette.paper;
    context.fill();
    context.lineWidth = 1.25;
    context.stroke();
    context.fillStyle = isStrong ? palette.paper : pen.ink;
    context.font = `650 ${text.length > 2 ? 9 : 11}px ${FONT}`;
    context.fillText(text, at[0], at[1] + 0.5);
  }
  context.restore();
}
