/** How a solid is turned by drag and key, and how it is held, in words. Pure. */
import { toClockHour } from "@/lib/gem/locate-point";
import type { Rotation } from "@/lib/gem/project-solid";

/** One press of an arrow key. */
const STEP_DEG = 15;

/** A slant at which the crown, the girdle and some depth are seen at once. */
export const SLANT: Rotation = { spinDeg: 10, tiltDeg: 65 };

/** Ways to hold it that the diagrams show too: crown view, profile from 6 o'clock, pavilion view. */
export const HOLDS: readonly { readonly label: string; readonly rotation: Rotation }[] = [
  { label: "Slant", rotation: SLANT },
  { label: "Crown", rotation: { spinDeg: 0, tiltDeg: 0 } },
  { label: "Side", rotation: { spinDeg: 0, tiltDeg: 90 } },
  { label: "Pavilion", rotation: { spinDeg: 180, tiltDeg: 180 } },
];

/** The spin in [0, 360), the tilt from the crown view to the pavilion view. */
function hold({ spinDeg, tiltDeg }: Rotation): Rotation {
  return { spinDeg: ((spinDeg % 360) + 360) % 360, tiltDeg: Math.min(180, Math.max(0, tiltDeg)) };
}

/** Turned so that the side that faces the viewer follows a drag: degrees to the right and down. */
export function dragSolid({ spinDeg, tiltDeg }: Rotation, rightDeg: number, downDeg: number): Rotation {
  return hold({ spinDeg: spinDeg - rightDeg, tiltDeg: tiltDeg - downDeg });
}

/** Turned by a key (`KeyboardEvent.key`); null for a key that turns nothing. */
export function turnByKey(rotation: Rotation, key: string): Rotation | null {
  switch (key) {
    case "ArrowLeft":
      return dragSolid(rotation, -STEP_DEG, 0);
    case "ArrowRight":
      return dragSolid(rotation, STEP_DEG, 0);
    case "ArrowUp":
      return dragSolid(rotation, 0, -STEP_DEG);
    case "ArrowDown":
      return dragSolid(rotation, 0, STEP_DEG);
    case "Home":
      return SLANT;
    default:
      return null;
  }
}

/** A share (0 … 1) of the way from one hold to another, round the shorter way. */
export function blendRotations(from: Rotation, to: Rotation, share: number): Rotation {
  const round = ((((to.spinDeg - from.spinDeg + 180) % 360) + 360) % 360) - 180;
  return hold({
    spinDeg: from.spinDeg + share * round,
    tiltDeg: from.tiltDeg + share * (to.tiltDeg - from.tiltDeg),
  });
}

/** "from the side, table up, 6 o'clock towards you" */
export function toRotationWords({ spinDeg, tiltDeg }: Rotation): string {
  const toHour = (clockDeg: number) => toClockHour(((clockDeg % 360) + 360) % 360);
  const near = toHour(180 - spinDeg);
  if (tiltDeg < 8) return `crown towards you, ${toHour(-spinDeg)} o'clock up`;
  if (tiltDeg > 172) return `pavilion towards you, ${near} o'clock up`;
  const how = tiltDeg < 82 ? "crown tipped away" : tiltDeg <= 98 ? "from the side, table up" : "from below";
  return `${how}, ${near} o'clock towards you`;
}
