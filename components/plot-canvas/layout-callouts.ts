import type { DrawnItem } from "@/components/plot-canvas/drawn-item";
import type { ToPx } from "@/components/plot-canvas/paint-stone";
import type { Point } from "@/lib/gem/point";
import { listVertices } from "@/lib/plot/shape";

/** A callout with room of its own. All in px. */
export interface PlacedCallout {
  readonly item: DrawnItem;
  readonly text: string;
  readonly at: Point;
  /** The vertex of the shape that its leader runs to. */
  readonly anchor: Point;
}

export const CALLOUT_RADIUS_PX = 9;
const APART_PX = 2 * CALLOUT_RADIUS_PX + 2;
const CLEAR_OF_MARK_PX = CALLOUT_RADIUS_PX + 4;
const RINGS_PX = [17, 27, 40];
const DIRECTIONS = 12;
/** More marks than this in sight are a crowd. */
const CROWD = 120;
const CELL_PX = 24;

/** Far more cells than any screen has in a row: a cell's column and row in one number. */
const CELLS_PER_ROW = 4096;
const toCell = (px: number) => Math.floor(px / CELL_PX) + CELLS_PER_ROW / 2;

/** Points by the square of the plane that they lie in, so that only near ones are compared. */
function createGrid() {
  const cells = new Map<number, Point[]>();
  return {
    add: (point: Point) => {
      const key = toCell(point[1]) * CELLS_PER_ROW + toCell(point[0]);
      const cell = cells.get(key);
      if (cell === undefined) cells.set(key, [point]);
      else cell.push(point);
    },
    hasWithin: (x: number, y: number, distance: number): boolean => {
      const square = distance * distance;
      const lastColumn = toCell(x + distance);
      const lastRow = toCell(y + distance);
      for (let row = toCell(y - distance); row <= lastRow; row += 1) {
        for (let column = toCell(x - distance); column <= lastColumn; column += 1) {
          const cell = cells.get(row * CELLS_PER_ROW + column);
          if (cell === undefined) continue;
          for (const [a, b] of cell) if ((a - x) * (a - x) + (b - y) * (b - y) < square) return true;
        }
      }
      return false;
    },
  };
}

/** The vertex that lies farthest in a direction. */
function findFarthest(points: readonly Point[], [dx, dy]: Point): Point {
  return points.reduce((best, point) =>
    point[0] * dx + point[1] * dy > best[0] * dx + best[1] * dy ? point : best,
  );
}

/** Directions to try, the one away from the middle of the stone first, then to either side of it. */
function listDirections(from: Point, middle: Point): Point[] {
  const outward = Math.atan2(from[1] - middle[1], from[0] - middle[0]);
  return Array.from({ length: DIRECTIONS }, (_, i) => {
    const turn = Math.ceil(i / 2) * (i % 2 === 0 ? 1 : -1);
    const angle = outward + (turn * 2 * Math.PI) / DIRECTIONS;
    return [Math.cos(angle), Math.sin(angle)];
  });
}

/**
 * A place for the callout of each item, clear of other callouts and of the marks themselves, within a square of
 * `sizePx`; `middle` is the stone's centre on the screen. Items are served in order; one that finds no room is left out until zooming in makes some. What is off
 * the screen has no callout.
 */
export function layoutCallouts(
  items: readonly DrawnItem[],
  toPx: ToPx,
  middle: Point,
  sizePx: number,
): PlacedCallout[] {
  const marks = createGrid();
  const callouts = createGrid();
  const isSeen = ([x, y]: Point, margin: number) =>
    x >= margin && y >= margin && x <= sizePx - margin && y <= sizePx - margin;
  const shown = items
    // Predictions have no callouts, and callouts may lie over them.
    .filter(({ strength }) => strength === undefined)
    .map((item) => ({ item, points: listVertices(item.shape).map(toPx) }))
    .filter(({ points }) => points.some((point) => isSeen(point, 0)));
  for (const { points } of shown) for (const point of points) marks.add(point);
  // Leaders in a crowd would be a thicket: only the nearest ring is tried.
  const rings = shown.length > CROWD ? RINGS_PX.slice(0, 1) : RINGS_PX;
  const findRoom = (points: readonly Point[]): { at: Point; anchor: Point } | null => {
    const directions = listDirections(points[0] as Point, middle);
    for (const ring of rings) {
      for (const way of directions) {
        const anchor = findFarthest(points, way);
        const at: Point = [anchor[0] + way[0] * ring, anchor[1] + way[1] * ring];
        if (!isSeen(at, CALLOUT_RADIUS_PX + 1)) continue;
        if (callouts.hasWithin(at[0], at[1], APART_PX)) continue;
        if (marks.hasWithin(at[0], at[1], CLEAR_OF_MARK_PX)) continue;
        return { at, anchor };
      }
    }
    return null;
  };
  return shown.flatMap(({ item, points }) => {
    if (item.callout === null) return [];
    const room = findRoom(points);
    if (room === null) return [];
    callouts.add(room.at);
    return [{ item, text: item.callout, ...room }];
  });
}
