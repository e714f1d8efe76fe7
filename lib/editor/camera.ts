/**
 * What part of a view is seen. `centre` is in the view's frame (girdle widths, y up); zoom 1 shows the whole view,
 * and at every zoom the window stays within what zoom 1 shows.
 */
import type { Point } from "@/lib/gem/point";

export const MIN_ZOOM = 1;
export const MAX_ZOOM = 8;

export interface Camera {
  readonly zoom: number;
  readonly centre: Point;
}

/** The window on the screen: a square of `sizePx`, and half the width of what it shows at zoom 1, in girdle widths. */
export interface Viewport {
  readonly sizePx: number;
  readonly halfWidth: number;
}

/** The whole view. */
export const WHOLE_VIEW: Camera = { zoom: 1, centre: [0, 0] };

const clamp = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));

/** The camera held within the limits of zoom and of the view. */
export function clampCamera(camera: Camera, halfWidth: number): Camera {
  const zoom = clamp(camera.zoom, MIN_ZOOM, MAX_ZOOM);
  const reach = halfWidth * (1 - 1 / zoom);
  const hold = (value: number) => clamp(value, -reach, reach) + 0;
  return { zoom, centre: [hold(camera.centre[0]), hold(camera.centre[1])] };
}

/** Screen pixels for one girdle width. */
export function getPxPerWidth(camera: Camera, viewport: Viewport): number {
  return (viewport.sizePx / (2 * viewport.halfWidth)) * camera.zoom;
}

/** A point of the view on the screen: px from the window's top left corner, y down. */
export function toScreenPx(camera: Camera, viewport: Viewport, point: Point): Point {
  const scale = getPxPerWidth(camera, viewport);
  const middle = viewport.sizePx / 2;
  return [middle + (point[0] - camera.centre[0]) * scale, middle - (point[1] - camera.centre[1]) * scale];
}

/** A place on the screen as a point of the view. */
export function fromScreenPx(camera: Camera, viewport: Viewport, px: Point): Point {
  const scale = getPxPerWidth(camera, viewport);
  const middle = viewport.sizePx / 2;
  return [camera.centre[0] + (px[0] - middle) / scale, camera.centre[1] - (px[1] - middle) / scale];
}

/** Zooms by a factor so that `anchor` (view frame) stays where it is on the screen, as far as the limits allow. */
export function zoomCamera(camera: Camera, factor: number, anchor: Point, halfWidth: number): Camera {
  const zoom = clamp(camera.zoom * factor, MIN_ZOOM, MAX_ZOOM);
  const share = camera.zoom / zoom;
  const follow = (axis: 0 | 1) => anchor[axis] + (camera.centre[axis] - anchor[axis]) * share;
  return clampCamera({ zoom, centre: [follow(0), follow(1)] }, halfWidth);
}

/** Moves the window by a distance in girdle widths. */
export function panCamera(camera: Camera, dx: number, dy: number, halfWidth: number): Camera {
  return clampCamera({ ...camera, centre: [camera.centre[0] + dx, camera.centre[1] + dy] }, halfWidth);
}

/** The camera moved no farther than it takes for the point to be seen, with a margin of a tenth of the window. */
export function revealPoint(camera: Camera, point: Point, halfWidth: number): Camera {
  const seen = (halfWidth / camera.zoom) * 0.9;
  const follow = (axis: 0 | 1) => clamp(camera.centre[axis], point[axis] - seen, point[axis] + seen);
  return clampCamera({ ...camera, centre: [follow(0), follow(1)] }, halfWidth);
}
