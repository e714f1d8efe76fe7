import { useReducedMotion } from "@mantine/hooks";
import { type KeyboardEvent, type PointerEvent, useEffect, useRef, useState } from "react";
import { blendRotations, dragSolid, SLANT, turnByKey } from "@/components/solid-figure/turn-solid";
import type { Rotation } from "@/lib/gem/project-solid";

/** A drag across the whole figure turns the stone half round. */
const DEG_PER_FIGURE = 180;
const TURN_MS = 350;

/** A rotation that follows drags and arrow keys, and goes over to another hold in a short move, or at once. */
export function useTurning() {
  const [rotation, setRotation] = useState(SLANT);
  const isStill = useReducedMotion();
  const frame = useRef(0);
  const held = useRef<{ id: number; x: number; y: number } | null>(null);
  useEffect(() => () => cancelAnimationFrame(frame.current), []);

  const turnTo = (to: Rotation) => {
    cancelAnimationFrame(frame.current);
    if (isStill) return setRotation(to);
    const from = rotation;
    const beganMs = performance.now();
    const step = (nowMs: number) => {
      const share = Math.min(1, Math.max(0, (nowMs - beganMs) / TURN_MS));
      setRotation(share === 1 ? to : blendRotations(from, to, share * share * (3 - 2 * share)));
      if (share < 1) frame.current = requestAnimationFrame(step);
    };
    frame.current = requestAnimationFrame(step);
  };

  const handlers = {
    onKeyDown: (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      const turned = turnByKey(rotation, event.key);
      if (turned === null) return;
      event.preventDefault();
      cancelAnimationFrame(frame.current);
      setRotation(turned);
    },
    onPointerDown: (event: PointerEvent<HTMLElement>) => {
      if (event.button !== 0 || held.current !== null) return;
      cancelAnimationFrame(frame.current);
      event.currentTarget.setPointerCapture(event.pointerId);
      held.current = { id: event.pointerId, x: event.clientX, y: event.clientY };
    },
    onPointerMove: (event: PointerEvent<HTMLElement>) => {
      const last = held.current;
      if (last?.id !== event.pointerId) return;
      const scale = DEG_PER_FIGURE / Math.max(1, event.currentTarget.clientWidth);
      const [right, down] = [(event.clientX - last.x) * scale, (event.clientY - last.y) * scale];
      held.current = { id: last.id, x: event.clientX, y: event.clientY };
      setRotation((before) => dragSolid(before, right, down));
    },
    onPointerUp: () => {
      held.current = null;
    },
    onPointerCancel: () => {
      held.current = null;
    },
  };
  return { rotation, turnTo, handlers };
}
