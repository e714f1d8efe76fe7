import { type RefObject, useLayoutEffect, useState } from "react";

/** The width of an element in whole px, followed as it changes; 0 before the first measurement. */
export function useSquareSize(ref: RefObject<HTMLElement | null>): number {
  const [sizePx, setSizePx] = useState(0);
  useLayoutEffect(() => {
    const element = ref.current;
    if (element === null) return;
    const measure = () => setSizePx(Math.floor(element.clientWidth));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [ref]);
  return sizePx;
}
