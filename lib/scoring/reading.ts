/** A reading: one way to lay a plot on a reference (SPEC 3). */
import type { View } from "@/lib/gem/point";
import { turnPoint } from "@/lib/gem/point";
import type { Motion } from "@/lib/scoring/mark-geometry";

/** Mirrored left to right in each view first, then turned as the stone turns, clockwise in the crown view. */
export interface Reading {
  readonly turnDeg: number;
  readonly mirrored: boolean;
}

/** How each view of a plot is read; both alike where the plot is read as a whole. */
export type Laying = Readonly<Record<View, Reading>>;

export const layAlike = (reading: Reading): Laying => ({ crown: reading, pavilion: reading });

export const AS_DRAWN: Reading = { turnDeg: 0, mirrored: false };

/** Readings that earn nothing are looked for at every multiple of this. */
export const SEARCH_STEP_DEG = 7.5;

/** Unmirrored before mirrored, then the smallest turn, clockwise before counter-clockwise. */
export function compareReadings(a: Reading, b: Reading): number {
  if (a.mirrored !== b.mirrored) return a.mirrored ? 1 : -1;
  return Math.abs(a.turnDeg) - Math.abs(b.turnDeg) || b.turnDeg - a.turnDeg;
}

const known = new WeakMap<readonly number[], readonly Reading[]>();

/**
 * Every reading that the search looks at, in the order of `compareReadings`: each 7.5 degrees in (-180, 180],
 * unmirrored and mirrored, and the cut's own turns where they lie between. Remembered with the list of turns.
 */
export function listSearchReadings(turns: readonly number[]): readonly Reading[] {
  const kept = known.get(turns);
  if (kept !== undefined) return kept;
  const steps = Array.from({ length: 360 / SEARCH_STEP_DEG }, (_, i) => -180 + (i + 1) * SEARCH_STEP_DEG);
  const between = turns.filter((turn) => turn % SEARCH_STEP_DEG !== 0);
  const readings = [false, true]
    .flatMap((mirrored) => [...steps, ...between].map((turnDeg) => ({ turnDeg: turnDeg + 0, mirrored })))
    .sort(compareReadings);
  known.set(turns, readings);
  return readings;
}

/** The motion of a view's frame that a reading stands for. */
export function toMotion(view: View, { turnDeg, mirrored }: Reading): Motion {
  const [xx, yx] = turnPoint(view, [mirrored ? -1 : 1, 0], turnDeg);
  const [xy, yy] = turnPoint(view, [0, 1], turnDeg);
  return { xx, xy, yx, yy, dx: 0, dy: 0 };
}
