import type { Palette } from "@/components/plot-canvas/drawn-item";
import { type PaintContext, type ToPx, tracePath } from "@/components/plot-canvas/paint-stone";
import type { Point } from "@/lib/gem/point";

/** A handle of the selected shape, to be drawn. */
export interface DrawnHandle {
  readonly kind: "vertex" | "edge";
  readonly at: Point;
  readonly isSelected: boolean;
}

/** Squares at the vertices, small rings in the middle of edges where one more can be put in. */
export function paintHandles(
  context: PaintContext,
  handles: readonly DrawnHandle[],
  toPx: ToPx,
  palette: Palette,
): void {
  context.save();
  context.setLineDash([]);
  context.strokeStyle = palette.ink;
  for (const { kind, at, isSelected } of handles) {
    const [x, y] = toPx(at);
    context.beginPath();
    if (kind === "vertex") {
      const half = isSelected ? 5.5 : 4;
      context.rect(x - half, y - half, 2 * half, 2 * half);
      context.lineWidth = 1.5;
    } else {
      context.arc(x, y, 2.75, 0, 2 * Math.PI);
      context.lineWidth = 1;
    }
    context.fillStyle = isSelected ? palette.ink : palette.paper;
    context.fill();
    context.stroke();
  }
  context.restore();
}

/** The keyboard's crosshair: four arms around an open middle. */
export function paintCrosshair(context: PaintContext, [x, y]: Point, palette: Palette): void {
  context.save();
  context.setLineDash([]);
  const arms = ([dx, dy]: Point) =>
    tracePath(
      context,
      [
        [x + dx * 5, y + dy * 5],
        [x + dx * 17, y + dy * 17],
      ],
      false,
    );
  for (const way of [
    [1, 0],
    [-1, 0],
    [0, 1],
    [0, -1],
  ] as const) {
    context.strokeStyle = palette.paper;
    context.lineWidth = 4;
    arms(way);
    context.stroke();
    context.strokeStyle = palette.ink;
    context.lineWidth = 1.75;
    arms(way);
    context.stroke();
  }
  context.restore();
}

/** A stroke or an outline in the making: what is set, and the way to where the pointer is. */
export function paintDraft(
  context: PaintContext,
  points: readonly Point[],
  next: Point | null,
  toPx: ToPx,
  ink: string,
): void {
  context.save();
  context.strokeStyle = ink;
  context.lineWidth = 2;
  context.lineJoin = "round";
  context.setLineDash([]);
  const set = points.map(toPx);
  tracePath(context, set, false);
  context.stroke();
  const last = set.at(-1);
  if (next !== null && last !== undefined) {
    context.setLineDash([3, 4]);
    context.lineWidth = 1.25;
    tracePath(context, [last, toPx(next)], false);
    context.stroke();
  }
  context.restore();
}
