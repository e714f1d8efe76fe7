import { type PointerEvent, type RefObject, useEffect, useRef } from "react";
import {
  type Camera,
  clampCamera,
  fromScreenPx,
  getPxPerWidth,
  type Viewport,
  zoomCamera,
} from "@/lib/editor/camera";
import type { Point } from "@/lib/gem/point";

/** What the pointer asks of a view. Points in the view's frame, `reach` in girdle widths. */
export interface ViewPointerHandlers {
  /** A press of the first button, pen or finger. True when it begins something that dragging goes on with. */
  readonly onPress: (at: Point, reach: number) => boolean;
  readonly onDrag: (points: readonly Point[], reach: number) => void;
  readonly onRelease: (reach: number) => void;
  /** The press became a pinch, or the browser took it away. */
  readonly onInterrupt: () => void;
  readonly onHover: (at: Point | null, reach: number) => void;
  readonly onCamera: (camera: Camera) => void;
  /** A press and release that began nothing and moved nothing. */
  readonly onTap: (at: Point) => void;
}

interface Held {
  px: Point;
}
type Doing =
  | { kind: "nothing" }
  | { kind: "tool" }
  | { kind: "pan"; from: Point; last: Point; hasMoved: boolean }
  | { kind: "pinch"; camera: Camera; middle: Point; apart: number };

const REACH_PX: Readonly<Record<string, number>> = { touch: 16, pen: 11, mouse: 9 };
const WHEEL_STEP = 0.0016;
const MOVED_PX = 4;

const getApart = ([a, b]: readonly Held[]) =>
  a === undefined || b === undefined ? 1 : Math.hypot(a.px[0] - b.px[0], a.px[1] - b.px[1]);
const getMiddle = ([a, b]: readonly Held[]): Point =>
  a === undefined || b === undefined ? [0, 0] : [(a.px[0] + b.px[0]) / 2, (a.px[1] + b.px[1]) / 2];

/** A place of the page in px from the top left corner within an element's border. */
function toHostPx(element: HTMLElement, event: { clientX: number; clientY: number }): Point {
  const box = element.getBoundingClientRect();
  return [event.clientX - box.left - element.clientLeft, event.clientY - box.top - element.clientTop];
}

/**
 * Mouse, pen and touch on one view: a tool's press, drag and release; two fingers zoom and pan; the middle button,
 * or any drag that begins nothing, pans; the wheel zooms with ctrl, and without it once the view has the focus.
 */
export function useViewPointer(
  host: RefObject<HTMLElement | null>,
  camera: Camera,
  viewport: Viewport,
  handlers: ViewPointerHandlers,
  isPanKeyDown: RefObject<boolean>,
) {
  const held = useRef(new Map<number, Held>());
  const doing = useRef<Doing>({ kind: "nothing" });
  const latest = useRef({ camera, viewport, handlers });
  latest.current = { camera, viewport, handlers };

  const toPx = (event: { clientX: number; clientY: number }): Point => {
    return host.current === null ? [0, 0] : toHostPx(host.current, event);
  };
  const toPoint = (px: Point) => fromScreenPx(latest.current.camera, latest.current.viewport, px);
  const getReach = (event: PointerEvent) =>
    (REACH_PX[event.pointerType] ?? 9) / getPxPerWidth(latest.current.camera, latest.current.viewport);

  const panTo = (from: Point, to: Point) => {
    const { camera: now, viewport: window, handlers: ask } = latest.current;
    const scale = getPxPerWidth(now, window);
    const centre: Point = [
      now.centre[0] - (to[0] - from[0]) / scale,
      now.centre[1] + (to[1] - from[1]) / scale,
    ];
    ask.onCamera(clampCamera({ zoom: now.zoom, centre }, window.halfWidth));
  };

  const beginPinch = () => {
    if (doing.current.kind === "tool") latest.current.handlers.onInterrupt();
    const fingers = [...held.current.values()];
    doing.current = {
      kind: "pinch",
      camera: latest.current.camera,
      middle: getMiddle(fingers),
      apart: Math.max(1, getApart(fingers)),
    };
  };

  const pinch = ({ camera: before, middle, apart }: Extract<Doing, { kind: "pinch" }>) => {
    const { viewport: window, handlers: ask } = latest.current;
    const fingers = [...held.current.values()];
    const under = fromScreenPx(before, window, middle);
    const zoom = clampCamera(
      { ...before, zoom: (before.zoom * getApart(fingers)) / apart },
      window.halfWidth,
    ).zoom;
    const [x, y] = getMiddle(fingers);
    const scale = getPxPerWidth({ zoom, centre: [0, 0] }, window);
    const half = window.sizePx / 2;
    const centre: Point = [under[0] - (x - half) / scale, under[1] + (y - half) / scale];
    ask.onCamera(clampCamera({ zoom, centre }, window.halfWidth));
  };

  const onPointerDown = (event: PointerEvent) => {
    host.current?.focus({ preventScroll: true });
    const px = toPx(event);
    held.current.set(event.pointerId, { px });
    host.current?.setPointerCapture(event.pointerId);
    if (held.current.size === 2) return beginPinch();
    if (held.current.size > 2) return;
    const isPan = event.button === 1 || (event.button === 0 && isPanKeyDown.current);
    if (isPan) event.preventDefault();
    else if (event.button !== 0) return;
    else if (latest.current.handlers.onPress(toPoint(px), getReach(event))) {
      doing.current = { kind: "tool" };
      return;
    }
    doing.current = { kind: "pan", from: px, last: px, hasMoved: false };
  };

  const onPointerMove = (event: PointerEvent) => {
    const px = toPx(event);
    const now = doing.current;
    const one = held.current.get(event.pointerId);
    if (one === undefined) {
      if (event.pointerType !== "touch") latest.current.handlers.onHover(toPoint(px), getReach(event));
      return;
    }
    one.px = px;
    if (now.kind === "tool") {
      const events = event.nativeEvent.getCoalescedEvents?.() ?? [];
      const points = (events.length > 0 ? events : [event]).map((each) => toPoint(toPx(each)));
      latest.current.handlers.onDrag(points, getReach(event));
      latest.current.handlers.onHover(toPoint(px), getReach(event));
    } else if (now.kind === "pan") {
      const moved = Math.hypot(px[0] - now.from[0], px[1] - now.from[1]) > MOVED_PX;
      if (moved || now.hasMoved) panTo(now.last, px);
      doing.current = {
        ...now,
        last: moved || now.hasMoved ? px : now.last,
        hasMoved: moved || now.hasMoved,
      };
    } else if (now.kind === "pinch") {
      pinch(now);
    }
  };

  const lift = (event: PointerEvent, isCancelled: boolean) => {
    if (!held.current.delete(event.pointerId)) return;
    const now = doing.current;
    const { handlers: ask } = latest.current;
    if (now.kind === "tool") {
      if (isCancelled) ask.onInterrupt();
      else ask.onRelease(getReach(event));
    } else if (now.kind === "pan" && !now.hasMoved && !isCancelled && event.button === 0) {
      ask.onTap(toPoint(now.from));
    }
    // After a pinch the finger that stays down does nothing until it is lifted too.
    doing.current = { kind: "nothing" };
    if (event.pointerType === "touch") ask.onHover(null, 0);
  };

  useEffect(() => {
    const element = host.current;
    if (element === null) return;
    const onWheel = (event: WheelEvent) => {
      const { camera: now, viewport: window, handlers: ask } = latest.current;
      const hasFocus = document.activeElement === element;
      if (!event.ctrlKey && !hasFocus) return;
      const factor = Math.exp(-event.deltaY * WHEEL_STEP * (event.ctrlKey ? 3 : 1));
      if (!event.ctrlKey && factor < 1 && now.zoom <= 1) return;
      event.preventDefault();
      const anchor = fromScreenPx(now, window, toHostPx(element, event));
      ask.onCamera(zoomCamera(now, factor, anchor, window.halfWidth));
    };
    element.addEventListener("wheel", onWheel, { passive: false });
    return () => element.removeEventListener("wheel", onWheel);
  }, [host]);

  return {
    onPointerDown,
    onPointerMove,
    onPointerUp: (event: PointerEvent) => lift(event, false),
    onPointerCancel: (event: PointerEvent) => lift(event, true),
    onPointerLeave: () => {
      if (held.current.size === 0) latest.current.handlers.onHover(null, 0);
    },
  };
}
